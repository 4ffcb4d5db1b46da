package org.bookholder.follow;

import java.util.List;
import org.bookholder.script.PreparedScript;
import org.bookholder.speech.Hypothesis;
import org.bookholder.timing.StreamTime;

/**
 * Follows a reading of a script: from what the ears believe to the reading position and to the outcome of each line.
 *
 * <p>Confined to one thread and knows no clock. Evidence may come from the two ears in any interleaving; what is settled
 * at the end of a take does not depend on it.
 */
public final class Follower {
    private final PreparedScript script;

    /** Creates a follower that has heard nothing yet. */
    public Follower(PreparedScript script) {
        this.script = script;
    }

    /** Begins a take that is to be read from {@code from}; {@code at} is where its audio begins. */
    public List<FollowEvent> startTake(int take, StreamTime at, ReadingPosition from) {
        return List.of(new FollowEvent.Moved(at, from, 0));
    }

    /** Takes in what an ear believes. */
    public List<FollowEvent> hear(Hypothesis hypothesis) {
        return List.of();
    }

    /** Puts the reading position somewhere by hand. */
    public List<FollowEvent> move(StreamTime at, ReadingPosition to) {
        return List.of(new FollowEvent.Moved(at, to, 0));
    }

    /** Stops following until {@link #resume}: what is said meanwhile is neither reading nor an aside. */
    public List<FollowEvent> hold(StreamTime at) {
        return List.of();
    }

    /** Follows again. */
    public List<FollowEvent> resume(StreamTime at) {
        return List.of();
    }

    /** Settles the whole take; to be called when both ears have finished. */
    public List<FollowEvent> endTake(StreamTime at) {
        return List.of(
                new FollowEvent.TakeSettled(at, Math.max(1, script.lines().size()), List.of(), List.of()));
    }
}
