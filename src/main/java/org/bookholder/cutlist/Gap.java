package org.bookholder.cutlist;

import java.util.List;
import org.bookholder.timing.StreamTime;

/**
 * Time left free for a line without a usable attempt.
 *
 * @param line line number, from 1
 * @param length estimated length of the line
 * @param markers notes for the editor, at least the reason for the gap
 */
public record Gap(int line, StreamTime length, List<CutMarker> markers) implements CutItem {
    /** Copies the list. */
    public Gap {
        markers = List.copyOf(markers);
    }

    @Override
    public int firstLine() {
        return line;
    }

    @Override
    public int lastLine() {
        return line;
    }
}
