package org.bookholder.delivery;

import java.util.Optional;
import org.bookholder.timing.StreamTime;

/**
 * One fault, or possible fault, in an export.
 *
 * @param grade whether it must be fixed
 * @param kind what kind it is: the profile's name for it, or "words"
 * @param place where it is; empty if it is the whole film
 * @param what what was found, for people
 * @param remedy what to do, an imperative phrase without a full stop
 */
public record Finding(Grade grade, String kind, Optional<Place> place, String what, String remedy) {
    /** Whether something must be fixed, from mild to grave. */
    public enum Grade {
        /** It may be intended: look, or listen. */
        LOOK,
        /** It must be fixed before the film goes out. */
        MEND
    }

    /**
     * A part of the film.
     *
     * @param start where it begins
     * @param end where it ends, not before it begins
     */
    public record Place(StreamTime start, StreamTime end) {
        /** Checks their order. */
        public Place {
            if (end.isBefore(start)) {
                throw new IllegalArgumentException("a place ends at " + end + ", before it begins at " + start);
            }
        }

        /** A place in a film whose times may go back, as in a damaged file; then it has no length. */
        static Place since(StreamTime start, StreamTime end) {
            return new Place(start, StreamTime.max(start, end));
        }
    }

    /** A finding about the whole film. */
    static Finding ofAll(Grade grade, String kind, String what, String remedy) {
        return new Finding(grade, kind, Optional.empty(), what, remedy);
    }

    /** A finding at a place. */
    static Finding at(StreamTime start, StreamTime end, Grade grade, String kind, String what, String remedy) {
        return new Finding(grade, kind, Optional.of(Place.since(start, end)), what, remedy);
    }

    /** The same, so much later. */
    public Finding later(StreamTime by) {
        return new Finding(
                grade,
                kind,
                place.map(p -> new Place(p.start().plus(by), p.end().plus(by))),
                what,
                remedy);
    }
}
