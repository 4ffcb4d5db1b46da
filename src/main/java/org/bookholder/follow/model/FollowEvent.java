package org.bookholder.follow.model;

import java.util.List;
import org.bookholder.timing.StreamTime;

/** A finding of the follower. */
public sealed interface FollowEvent {
    /** How much of the session's audio had been processed at the time of the finding. */
    StreamTime at();

    /** Calls the method of {@code listener} for this kind of event. */
    void to(Listener listener);

    /** Receives the follower's findings. */
    interface Listener {
        /** Told of {@link Moved}. */
        void moved(Moved event);

        /** Told of {@link Changed}. */
        void changed(Changed event);

        /** Told of {@link AttemptSettled}. */
        void attemptSettled(AttemptSettled event);

        /** Told of {@link TakeSettled}. */
        void takeSettled(TakeSettled event);

        /** Told of {@link AsidesHeard}. */
        void asidesHeard(AsidesHeard event);

        /** Told of {@link NotJudged}. */
        void notJudged(NotJudged event);

        /** Told of {@link Understood}. */
        void understood(Understood event);
    }

    /**
     * The reading position changed.
     *
     * @param at audio processed so far
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

    /** An attempt was decided, or an earlier decision on the attempt with the same ordinal was corrected. */
    record AttemptSettled(StreamTime at, Attempt attempt) implements FollowEvent {
        @Override
        public void to(Listener listener) {
            listener.attemptSettled(this);
        }
    }

    /** The asides of a running take so far, in order of time; they replace those that were told before. */
    record AsidesHeard(StreamTime at, int take, List<Aside> asides) implements FollowEvent {
        /** Copies the list. */
        public AsidesHeard {
            asides = List.copyOf(asides);
        }

        @Override
        public void to(Listener listener) {
            listener.asidesHeard(this);
        }
    }

    /** The final result of a take that has ended; replaces everything decided about this take before. */
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
     * @param at audio processed so far
     * @param stretch the part that could not be judged
     * @param log the error and all input of the part that failed, so that the fault can be reproduced
     */
    record NotJudged(StreamTime at, UnjudgedStretch stretch, String log) implements FollowEvent {
        @Override
        public void to(Listener listener) {
            listener.notJudged(this);
        }
    }

    /**
     * The recogniser that checks what was read understands this reader badly, or well again.
     *
     * @param at audio processed so far
     * @param badly whether so few words are understood that single misread words can't be told
     * @param share the share of the words read that it heard as written, 0 to 1
     */
    record Understood(StreamTime at, boolean badly, double share) implements FollowEvent {
        @Override
        public void to(Listener listener) {
            listener.understood(this);
        }
    }
}
