package org.bookholder.handoff.captions;

import java.util.List;
import org.bookholder.timing.StreamTime;

/**
 * One caption.
 *
 * @param start when it appears
 * @param end when it disappears
 * @param rows its text, row by row
 */
record Caption(StreamTime start, StreamTime end, List<String> rows) {
    Caption {
        rows = List.copyOf(rows);
    }
}
