package org.bookholder.view.page;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;

/**
 * The lines to pick up, looked for only when the notes on lines have changed and not for each picture. Confined to one
 * thread.
 */
public final class PickupLines {
    private List<LineNotes> seen = List.of();
    private final BitSet marked = new BitSet();
    private final List<Integer> numbers = new ArrayList<>();

    /** Takes the notes as they are now; says whether they are other ones. */
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

    /** Whether a line is to be picked up. */
    public boolean has(int line) {
        return marked.get(line);
    }

    /** The lines, in script order; changed in place. */
    public List<Integer> numbers() {
        return numbers;
    }

    /** How many there are. */
    public int count() {
        return numbers.size();
    }
}
