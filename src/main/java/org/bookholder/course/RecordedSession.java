package org.bookholder.course;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.bookholder.session.SessionState;
import org.bookholder.session.Take;

/**
 * A session recorded from a lesson's script, or from an earlier version of it.
 *
 * @param folder its folder
 * @param state its state at the end; has at least one take
 */
public record RecordedSession(Path folder, SessionState state) {
    /** Checks that something was recorded. */
    public RecordedSession {
        if (state.takes().all().isEmpty()) {
            throw new IllegalArgumentException("the session " + folder + " must have a take");
        }
    }

    /** Time of day at which its first take was rolled. */
    public Instant began() {
        return state.takes().all().get(0).when();
    }

    /** Time of day at which its last take ended. */
    public Instant ended() {
        List<Take> takes = state.takes().all();
        Take last = takes.get(takes.size() - 1);
        return last.when().plus(last.end().since(last.start()).toDuration());
    }
}
