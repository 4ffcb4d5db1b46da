package org.bookholder.session;

import org.bookholder.timing.StreamTime;

/** One thing that was decided about what becomes of a line in the film. */
public sealed interface FilmChange {
    /** Whether it is about the session as a whole, which is line 0, and not about one of its lines. */
    default boolean ofSession() {
        return this instanceof KeptPoint || this instanceof HeardFrom;
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
     * Which camera shows the line, and what follows it up to the next join.
     *
     * @param camera the name of the camera's file
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
     * @param file the file's name, or what stands for the recordings of the takes
     */
    record HeardFrom(String file) implements FilmChange {
        @Override
        public <T> T to(Handler<T> handler) {
            return handler.heardFrom(this);
        }
    }
}
