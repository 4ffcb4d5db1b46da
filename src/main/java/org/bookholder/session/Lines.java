package org.bookholder.session;

import java.util.List;
import org.bookholder.follow.model.Aside;
import org.pcollections.PVector;
import org.pcollections.TreePVector;

/**
 * What is known of the lines, and what was said between them.
 *
 * @param all the notes of each line, in script order
 * @param asides in order of time
 */
public record Lines(PVector<LineNotes> all, PVector<Aside> asides) {
    /** Lines made by hand, to show. */
    public static Lines of(List<LineNotes> all) {
        return new Lines(TreePVector.from(all), TreePVector.empty());
    }

    /**
     * What is known of a line.
     *
     * @param line line number, from 1 to {@link #count}
     */
    public LineNotes notes(int line) {
        return all.get(line - 1);
    }

    /** How many lines the script has. */
    public int count() {
        return all.size();
    }

    /** The lines to pick up, in script order. */
    public List<LineNotes> pickups() {
        return all.stream().filter(LineNotes::pickup).toList();
    }
}
