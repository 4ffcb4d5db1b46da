package org.bookholder.session;

import org.bookholder.timing.StreamTime;

/** One thing that was decided about what becomes of a line in the film. */
public sealed interface FilmChange {
    /** Whether it can be decided about that line, or with line 0 about the session as a whole. */
    default boolean fits(int line) {
        boolean ofSession = this instanceof KeptPoint || this instanceof HeardFrom || this instanceof OfTake;
        return line == 0 ? ofSession || this instanceof SeenBy : !ofSession;
    }

    /** Calls the handler's method for this change and returns its result. */
    <T> T to(Handler<T> handler);

    /**
     * Receives changes by kind.
     *
     * @param <T> the result of each method
     */
    interface Handler<T> {
        /** Receives {@link Framed}. */
        T framed(Framed change);

        /** Receives {@link Paused}. */
        T paused(Paused change);

        /** Receives {@link CutAt}. */
        T cutAt(CutAt change);

        /** Receives {@link SeenBy}. */
        T seenBy(SeenBy change);

        /** Receives {@link KeptPoint}. */
        T keptPoint(KeptPoint change);

        /** Receives {@link HeardFrom}. */
        T heardFrom(HeardFrom change);

        /** Receives {@link OfTake}. */
        T ofTake(OfTake change);
    }

    /** How close the picture is framed from the join before the line on. */
    record Framed(FilmChoices.Framing framing) implements FilmChange {
        @Override
        public <T> T to(Handler<T> handler) {
            return handler.framed(this);
        }
    }

    /**
     * How long the pause before the line is.
     *
     * @param millis milliseconds of quiet, or {@link FilmChoices#AS_READ}
     */
    record Paused(int millis) implements FilmChange {
        /** Checks the range. */
        public Paused {
            if (millis < FilmChoices.AS_READ || millis > FilmChoices.LONGEST_PAUSE) {
                throw new IllegalArgumentException("millis (" + millis + ") must be from " + FilmChoices.AS_READ
                        + " to " + FilmChoices.LONGEST_PAUSE);
            }
        }

        @Override
        public <T> T to(Handler<T> handler) {
            return handler.paused(this);
        }
    }

    /**
     * Where an attempt is cut.
     *
     * @param take the attempt's take
     * @param ordinal its number within the take
     * @param edge whether it is the place where it begins or where it ends
     * @param place that place, in the session's audio
     */
    record CutAt(int take, int ordinal, FilmChoices.Edge edge, StreamTime place) implements FilmChange {
        @Override
        public <T> T to(Handler<T> handler) {
            return handler.cutAt(this);
        }
    }

    /**
     * Which camera shows the line, and what follows it up to the next join; with line 0, which shows all takes of the session.
     *
     * @param camera the name of the camera's file; empty, for the session or a take, for the one that the program chooses
     */
    record SeenBy(String camera) implements FilmChange {
        @Override
        public <T> T to(Handler<T> handler) {
            return handler.seenBy(this);
        }
    }

    /**
     * The point of a camera's picture that stays in place when it is framed closer. It holds for the whole session, and is kept as a
     * decision about its line 0.
     *
     * @param camera the name of the camera's file
     * @param point the point
     */
    record KeptPoint(String camera, FilmChoices.Point point) implements FilmChange {
        @Override
        public <T> T to(Handler<T> handler) {
            return handler.keptPoint(this);
        }
    }

    /**
     * Which file is heard. It holds for the whole session, likewise.
     *
     * @param file the file's name, or {@link FilmChoices#TAKES}; with a colon and some of its channels behind it, if they were chosen;
     *     empty for what the program chooses
     */
    record HeardFrom(String file) implements FilmChange {
        @Override
        public <T> T to(Handler<T> handler) {
            return handler.heardFrom(this);
        }
    }

    /**
     * The same for one take alone.
     *
     * @param take take number, from 1
     * @param what which camera shows it, or which file is heard
     */
    record OfTake(int take, FilmChange what) implements FilmChange {
        /** Checks what it is. */
        public OfTake {
            if (!(what instanceof SeenBy) && !(what instanceof HeardFrom)) {
                throw new IllegalArgumentException("what (" + what + ") must be about a camera or a sound");
            }
        }

        @Override
        public <T> T to(Handler<T> handler) {
            return handler.ofTake(this);
        }
    }
}
