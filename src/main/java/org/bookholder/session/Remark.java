package org.bookholder.session;

import java.time.Instant;
import java.util.List;
import org.bookholder.timing.StreamTime;

/** What a person adds to a session: marks, notes, words to the presenter, breaks and decisions. */
public sealed interface Remark {
    /** Calls the handler's method for this remark. */
    void to(Handler handler);

    /** Receives remarks by kind. */
    interface Handler {
        /** Receives {@link Noted}. */
        void noted(Noted remark);

        /** Receives {@link Told}. */
        void told(Told remark);

        /** Receives {@link BreakBegan}. */
        void breakBegan(BreakBegan remark);

        /** Receives {@link BreakOver}. */
        void breakOver(BreakOver remark);

        /** Receives {@link Decided}. */
        void decided(Decided remark);

        /** Receives {@link Bounded}. */
        void bounded(Bounded remark);

        /** Receives {@link Filmed}. */
        void filmed(Filmed remark);

        /** Receives {@link Undone}. */
        void undone(Undone remark);

        /** Receives {@link Carried}. */
        void carried(Carried remark);

        /** Receives {@link Signed}. */
        void signed(Signed remark);

        /** Receives {@link Edited}. */
        void edited(Edited remark);

        /** Receives {@link Retracted}. */
        void retracted(Retracted remark);

        /** Receives {@link Shown}. */
        void shown(Shown remark);
    }

    /**
     * A remark of a known author, who can take it back.
     *
     * @param author {@link #PRESENTER}, or the name that a desk's page has given itself
     * @param remark the remark; it is not signed itself
     * @param name what its author calls this act, so that it is done once, however often it is asked for; empty if it has no name
     */
    record Signed(String author, Remark remark, String name) implements Remark {
        /** The author at the reading window. */
        public static final String PRESENTER = "presenter";

        /** A remark without a name. */
        public Signed(String author, Remark remark) {
            this(author, remark, "");
        }

        /** Checks that the remark is not signed twice. */
        public Signed {
            if (remark instanceof Signed) {
                throw new IllegalArgumentException("remark (" + remark + ") must not be signed already");
            }
        }

        @Override
        public void to(Handler handler) {
            handler.signed(this);
        }
    }

    /**
     * The text of a note was changed; an empty text removes a note that marks no line.
     *
     * @param note the note's number
     * @param text its new text
     */
    record Edited(int note, String text) implements Remark {
        @Override
        public void to(Handler handler) {
            handler.edited(this);
        }
    }

    /** Takes back what someone did; {@code act} is its number, see {@link Acts}. */
    record Retracted(int act) implements Remark {
        @Override
        public void to(Handler handler) {
            handler.retracted(this);
        }
    }

    /** A note on a line, from 1; {@code pickup} also marks the line as a pickup. */
    record Noted(int line, String text, boolean pickup) implements Remark {
        @Override
        public void to(Handler handler) {
            handler.noted(this);
        }
    }

    /** A short message to the presenter; an empty one withdraws the last one. */
    record Told(String text) implements Remark {
        @Override
        public void to(Handler handler) {
            handler.told(this);
        }
    }

    /** A break began at this time of day. */
    record BreakBegan(Instant when) implements Remark {
        @Override
        public void to(Handler handler) {
            handler.breakBegan(this);
        }
    }

    /** The break ended at this time of day. */
    record BreakOver(Instant when) implements Remark {
        @Override
        public void to(Handler handler) {
            handler.breakOver(this);
        }
    }

    /**
     * A decision about a line; it replaces an earlier one.
     *
     * @param line line number, from 1
     * @param choice what should happen to the line
     * @param take take of the attempt it concerns, 0 for none
     * @param ordinal number of that attempt within its take, 0 for none
     */
    record Decided(int line, Decision.Choice choice, int take, int ordinal) implements Remark {
        @Override
        public void to(Handler handler) {
            handler.decided(this);
        }
    }

    /** Someone has set by ear where an attempt begins and ends. */
    record Bounded(int take, int ordinal, StreamTime start, StreamTime end) implements Remark {
        @Override
        public void to(Handler handler) {
            handler.bounded(this);
        }
    }

    /** A decision about what becomes of a line, from 1, in the film. */
    record Filmed(int line, FilmChange change) implements Remark {
        @Override
        public void to(Handler handler) {
            handler.filmed(this);
        }
    }

    /** The reading window has shown this message to the presenter. */
    record Shown(int message) implements Remark {
        @Override
        public void to(Handler handler) {
            handler.shown(this);
        }
    }

    /** Undoes the last {@link Decided}, {@link Bounded} or {@link Filmed} that still holds, whoever made it; in older sessions. */
    record Undone() implements Remark {
        @Override
        public void to(Handler handler) {
            handler.undone(this);
        }
    }

    /** Accepted readings carried over from earlier sessions of the same course. */
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
