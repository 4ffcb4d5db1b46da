package org.bookholder.session;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.bookholder.follow.model.Aside;
import org.pcollections.PVector;
import org.pcollections.TreePVector;

/**
 * Everything known about the lines, and what was said between them.
 *
 * @param all the notes of each line, in script order
 * @param asides the asides in order of time
 */
public record Lines(PVector<LineNotes> all, PVector<Aside> asides) {
    /** Lines made by hand, for display. */
    public static Lines of(List<LineNotes> all) {
        return new Lines(TreePVector.from(all), TreePVector.empty());
    }

    /**
     * The notes of a line.
     *
     * @param line line number, from 1 to {@link #count}
     */
    public LineNotes notes(int line) {
        return all.get(line - 1);
    }

    /** Number of lines in the script. */
    public int count() {
        return all.size();
    }

    /** The asides with those of one take replaced, in order of time. */
    static PVector<Aside> asidesWith(PVector<Aside> asides, int take, List<Aside> found) {
        return TreePVector.from(Stream.concat(asides.stream().filter(a -> a.take() != take), found.stream())
                .sorted(Comparator.comparing(Aside::start))
                .toList());
    }

    /** The lines to pick up, in script order. */
    public List<LineNotes> pickups() {
        return all.stream().filter(LineNotes::pickup).toList();
    }
}
