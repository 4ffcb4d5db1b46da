package org.bookholder.view;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.session.SessionState;
import org.bookholder.session.Take;

/** Where in the script takes were begun, as far as they were seen. Confined to one thread. */
final class TakeStarts {
    /** A presenter who goes back so soon after a take's beginning means the take before, in seconds. */
    private static final double JUST_BEGUN = 3;

    private final List<ReadingPosition> starts = new ArrayList<>();

    /** Looks whether another take has been begun. */
    void look(SessionState state) {
        while (starts.size() < state.takes().count()) {
            starts.add(state.following().position());
        }
    }

    /** Where the running or last take began, or the one before if that has only just begun. */
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
