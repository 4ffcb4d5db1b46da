package org.bookholder.follow.model;

import java.util.List;
import org.bookholder.timing.StreamTime;

/** What following found out. */
public sealed interface FollowEvent {
    /** How much of the session's audio had been taken in when it was found out. */
    StreamTime at();

    /** Tells {@code listener} of it. */
    void to(Listener listener);

    /** Who is told what following found out. */
    interface Listener {
        /** Told of {@link Moved}. */
        void moved(Moved event);

        /** Told of {@link Changed}. */
        void changed(Changed event);

        /** Told of {@link AttemptSettled}. */
        void attemptSettled(AttemptSettled event);

        /** Told of {@link TakeSettled}. */
        void takeSettled(TakeSettled event);

        /** Told of {@link NotJudged}. */
        void notJudged(NotJudged event);
    }

    /**
     * The reading position changed.
     *
     * @param at audio taken in
     * @param position the word to be read next
     * @param wordsRead spoken words read to get there, 0 for a jump or a step back
     */
    record Moved(StreamTime at, ReadingPosition position, int wordsRead) implements FollowEvent {
        @Override
        public void to(Listener listener) {
            listener.moved(this);
        }
    }

    /** The follower became more or less sure of its position. */
    record Changed(StreamTime at, FollowState state) implements FollowEvent {
        @Override
        public void to(Listener listener) {
            listener.changed(this);
        }
    }

    /** An attempt was settled, or one settled earlier (of the same ordinal) was corrected. */
    record AttemptSettled(StreamTime at, Attempt attempt) implements FollowEvent {
        @Override
        public void to(Listener listener) {
            listener.attemptSettled(this);
        }
    }

    /** The take is over, and this is what became of it; replaces all that was settled of this take. */
    record TakeSettled(StreamTime at, int take, List<Attempt> attempts, List<Aside> asides) implements FollowEvent {
        /** Copies the lists. */
        public TakeSettled {
            attempts = List.copyOf(attempts);
            asides = List.copyOf(asides);
        }

        @Override
        public void to(Listener listener) {
            listener.takeSettled(this);
        }
    }

    /**
     * A fault of the program kept it from judging a stretch of a take; following goes on.
     *
     * @param at audio taken in
     * @param stretch what is not judged
     * @param log what went wrong, and all that was told to what failed, to bring the fault about again
     */
    record NotJudged(StreamTime at, UnjudgedStretch stretch, String log) implements FollowEvent {
        @Override
        public void to(Listener listener) {
            listener.notJudged(this);
        }
    }
}
