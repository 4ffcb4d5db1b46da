package org.bookholder.follow.model;

import java.util.List;
import org.bookholder.timing.StreamTime;

/**
 * A part of a take for which the program failed to judge what was read.
 *
 * @param take take number, from 1
 * @param start where it begins in the session's audio
 * @param end where it ends
 * @param lines the lines that were being read during it, from 1, in ascending order; a line that also has a complete
 *     attempt elsewhere has its outcome from that attempt
 */
public record UnjudgedStretch(int take, StreamTime start, StreamTime end, List<Integer> lines) {
    /** Copies the list. */
    public UnjudgedStretch {
        lines = List.copyOf(lines);
    }
}
