package org.bookholder.view.page;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;

/**
 * The lines to pick up. They are searched for only when the notes on lines have changed, not for every picture.
 * Confined to one thread.
 */
public final class PickupLines {
    private List<LineNotes> seen = List.of();
    private final BitSet marked = new BitSet();
    private final List<Integer> numbers = new ArrayList<>();

    /** Takes the current notes; returns whether they have changed. */
    @SuppressWarnings("ReferenceEquality")
    public boolean look(SessionState state) {
        if (state.lines().all() == seen) {
            return false;
        }
        seen = state.lines().all();
        marked.clear();
        numbers.clear();
        for (LineNotes notes : seen) {
            if (notes.pickup()) {
                marked.set(notes.line());
                numbers.add(notes.line());
            }
        }
        return true;
    }

    /** Whether this line is to be picked up. */
    public boolean has(int line) {
        return marked.get(line);
    }

    /** The lines to pick up, in script order; the list is changed in place. */
    public List<Integer> numbers() {
        return numbers;
    }

    /** Number of lines to pick up. */
    public int count() {
        return numbers.size();
    }
}
