package org.bookholder.session;

import java.time.Instant;
import java.util.List;
import org.bookholder.timing.StreamTime;

/** What a person at the desk adds to a session: notes, words to the presenter, breaks and decisions. */
public sealed interface Remark {
    /** Tells {@code handler} what was added. */
    void to(Handler handler);

    /** Who is told what was added. */
    interface Handler {
        /** Told of {@link Noted}. */
        void noted(Noted remark);

        /** Told of {@link Told}. */
        void told(Told remark);

        /** Told of {@link BreakBegan}. */
        void breakBegan(BreakBegan remark);

        /** Told of {@link BreakOver}. */
        void breakOver(BreakOver remark);

        /** Told of {@link Decided}. */
        void decided(Decided remark);

        /** Told of {@link Bounded}. */
        void bounded(Bounded remark);

        /** Told of {@link Undone}. */
        void undone(Undone remark);

        /** Told of {@link Carried}. */
        void carried(Carried remark);
    }

    /** A note on a line, from 1, which with {@code pickup} is marked as a pickup, too. */
    record Noted(int line, String text, boolean pickup) implements Remark {
        @Override
        public void to(Handler handler) {
            handler.noted(this);
        }
    }

    /** A short message to the presenter; an empty one takes the last one back. */
    record Told(String text) implements Remark {
        @Override
        public void to(Handler handler) {
            handler.told(this);
        }
    }

    /** A break began, at that time of day. */
    record BreakBegan(Instant when) implements Remark {
        @Override
        public void to(Handler handler) {
            handler.breakBegan(this);
        }
    }

    /** The break is over, at that time of day. */
    record BreakOver(Instant when) implements Remark {
        @Override
        public void to(Handler handler) {
            handler.breakOver(this);
        }
    }

    /**
     * A line was decided on; replaces what was decided before.
     *
     * @param line line number, from 1
     * @param choice what is to become of it
     * @param take take of the attempt it is about, 0 for none
     * @param ordinal number of that attempt within its take, 0 for none
     */
    record Decided(int line, Decision.Choice choice, int take, int ordinal) implements Remark {
        @Override
        public void to(Handler handler) {
            handler.decided(this);
        }
    }

    /** Someone has heard where an attempt begins and ends. */
    record Bounded(int take, int ordinal, StreamTime start, StreamTime end) implements Remark {
        @Override
        public void to(Handler handler) {
            handler.bounded(this);
        }
    }

    /** The last {@link Decided} or {@link Bounded} that still holds is taken back. */
    record Undone() implements Remark {
        @Override
        public void to(Handler handler) {
            handler.undone(this);
        }
    }

    /** What was learned in earlier sessions of the same course. */
    record Carried(List<AcceptedReading> readRight) implements Remark {
        /** Copies the list. */
        public Carried {
            readRight = List.copyOf(readRight);
        }

        @Override
        public void to(Handler handler) {
            handler.carried(this);
        }
    }
}
