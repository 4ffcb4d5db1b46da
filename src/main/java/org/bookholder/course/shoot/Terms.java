package org.bookholder.course.shoot;

import java.time.Duration;
import org.bookholder.course.ReadingOrder;
import org.bookholder.fatigue.FatigueLimits;

/**
 * The limits that a recording session must keep. All are in whole minutes.
 *
 * @param setUp time to set up before the first take
 * @param stretch the most reading without a break: the voice's limit, or the screen's if that is lower
 * @param pause length of a break, 10 minutes: HSE advises 5 to 10 minutes away from the screen each hour
 * @param reading the most reading in a session
 * @param order in which order lessons are recorded
 */
public record Terms(Duration setUp, Duration stretch, Duration pause, Duration reading, ReadingOrder order) {
    private static final Duration TEN_MINUTES = Duration.ofMinutes(10);

    /** Checks the lengths. */
    public Terms {
        if (setUp.isNegative() || !positive(stretch) || !positive(pause) || !positive(reading)) {
            throw new IllegalArgumentException("setUp (" + setUp + ") must not be negative, stretch (" + stretch
                    + "), pause (" + pause + ") and reading (" + reading + ") must be above zero");
        }
        if (!wholeMinutes(setUp) || !wholeMinutes(stretch) || !wholeMinutes(pause) || !wholeMinutes(reading)) {
            throw new IllegalArgumentException("setUp (" + setUp + "), stretch (" + stretch + "), pause (" + pause
                    + ") and reading (" + reading + ") must be whole minutes");
        }
    }

    /** The limits of a session in which the order of lessons is free. */
    public Terms(Duration setUp, Duration stretch, Duration pause, Duration reading) {
        this(setUp, stretch, pause, reading, ReadingOrder.FREE);
    }

    /** The same with an order of lessons. */
    public Terms with(ReadingOrder other) {
        return new Terms(setUp, stretch, pause, reading, other);
    }

    static boolean wholeMinutes(Duration length) {
        return length.equals(Duration.ofMinutes(length.toMinutes()));
    }

    private static boolean positive(Duration length) {
        return !length.isZero() && !length.isNegative();
    }

    /** The terms that follow from the fatigue limits: breaks and stops come when they are due, not later. */
    public static Terms of(FatigueLimits limits, Duration setUp) {
        return new Terms(
                setUp,
                min(limits.voice().due(), limits.screen().due()),
                limits.realBreak().compareTo(TEN_MINUTES) > 0 ? limits.realBreak() : TEN_MINUTES,
                min(limits.reading().due(), limits.onCamera().due()));
    }

    private static Duration min(Duration a, Duration b) {
        return a.compareTo(b) <= 0 ? a : b;
    }
}
