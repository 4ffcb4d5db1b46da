package org.bookholder.session;

import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.ReadingPosition;

/**
 * The reading position.
 *
 * @param position the next word to read
 * @param mover who or what moved it there
 * @param certainty how certain the follower is
 */
public record Following(ReadingPosition position, Mover mover, FollowState certainty) {
    static Following from(ReadingPosition position) {
        return new Following(position, Mover.VOICE, FollowState.FOLLOWING);
    }

    Following movedTo(ReadingPosition to, Mover by) {
        return new Following(to, by, certainty);
    }

    Following with(FollowState now) {
        return new Following(position, mover, now);
    }
}
