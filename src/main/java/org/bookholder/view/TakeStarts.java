package org.bookholder.view;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.session.SessionState;
import org.bookholder.session.Take;

/** Remembers where in the script takes began. Confined to one thread. */
final class TakeStarts {
    /** Going back within this many seconds of a take's beginning means the take before. */
    private static final double JUST_BEGUN = 3;

    private final List<ReadingPosition> starts = new ArrayList<>();

    /** Notes a new take, if one has begun. */
    void look(SessionState state) {
        while (starts.size() < state.takes().count()) {
            starts.add(state.following().position());
        }
    }

    /** Where the running or last take began; if it has only just begun, where the one before began. */
    ReadingPosition previous(SessionState state) {
        if (starts.isEmpty()) {
            return ReadingPosition.START;
        }
        Take last = state.takes().last();
        boolean begun = state.now().seconds() - last.start().seconds() < JUST_BEGUN;
        int take = state.takes().rolling() && begun ? starts.size() - 2 : starts.size() - 1;
        ReadingPosition start = starts.get(Math.max(0, take));
        return start.line() > state.lines().count() ? ReadingPosition.START : start;
    }
}
