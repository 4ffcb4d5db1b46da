package org.bookholder.follow.model;

import java.util.List;
import org.bookholder.timing.StreamTime;

/**
 * A stretch of a take of which it is not known what was read, because the program failed to judge it.
 *
 * @param take take number, from 1
 * @param start where it begins in the session's audio
 * @param end where it ends
 * @param lines the lines that the voice was in meanwhile, from 1, in ascending order; those of them that have a complete
 *     attempt besides are known by that
 */
public record UnjudgedStretch(int take, StreamTime start, StreamTime end, List<Integer> lines) {
    /** Copies the list. */
    public UnjudgedStretch {
        lines = List.copyOf(lines);
    }
}
