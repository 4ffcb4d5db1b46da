package org.bookholder.cutlist;

import java.util.List;
import org.bookholder.timing.StreamTime;

/**
 * Room left for a line that has no attempt to use.
 *
 * @param line line number, from 1
 * @param length as long as the line is likely to take
 * @param markers what an editor is to be told of, at least why there is a gap
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
