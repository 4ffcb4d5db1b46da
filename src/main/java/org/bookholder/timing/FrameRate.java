package org.bookholder.timing;

import java.util.List;
import java.util.Optional;

/**
 * A frame rate in pictures per second, as an exact fraction.
 *
 * @param numerator pictures in {@code denominator} seconds, 1 or more
 * @param denominator seconds, 1 or more
 */
public record FrameRate(int numerator, int denominator) {
    /** 24 / 1.001. */
    public static final FrameRate FPS_23_976 = new FrameRate(24_000, 1001);

    /** 24. */
    public static final FrameRate FPS_24 = new FrameRate(24, 1);

    /** 25. */
    public static final FrameRate FPS_25 = new FrameRate(25, 1);

    /** 30 / 1.001. */
    public static final FrameRate FPS_29_97 = new FrameRate(30_000, 1001);

    /** 30. */
    public static final FrameRate FPS_30 = new FrameRate(30, 1);

    /** 50. */
    public static final FrameRate FPS_50 = new FrameRate(50, 1);

    /** 60 / 1.001. */
    public static final FrameRate FPS_59_94 = new FrameRate(60_000, 1001);

    /** 60. */
    public static final FrameRate FPS_60 = new FrameRate(60, 1);

    /** The usual rates for editing, ascending. */
    public static final List<FrameRate> STANDARD =
            List.of(FPS_23_976, FPS_24, FPS_25, FPS_29_97, FPS_30, FPS_50, FPS_59_94, FPS_60);

    private static final int NTSC = 1001;

    /** Checks the ranges. */
    public FrameRate {
        if (numerator < 1 || denominator < 1) {
            throw new IllegalArgumentException(
                    "rate (" + numerator + "/" + denominator + ") must be of two positive numbers");
        }
    }

    /** The standard rate with that {@link #label()}; also accepts 23.98, which many programs write. */
    public static Optional<FrameRate> named(String name) {
        String wanted = name.equals("23.98") ? "23.976" : name;
        return STANDARD.stream().filter(rate -> rate.label().equals(wanted)).findFirst();
    }

    /** The standard rate nearest to {@code numerator / denominator}; empty if none is within 0.05 % of it. */
    public static Optional<FrameRate> near(long numerator, long denominator) {
        if (numerator <= 0 || denominator <= 0) {
            return Optional.empty();
        }
        double wanted = (double) numerator / denominator;
        return STANDARD.stream()
                .filter(rate -> Math.abs(rate.perSecond() / wanted - 1) < 0.0005)
                .min((a, b) -> Double.compare(Math.abs(a.perSecond() - wanted), Math.abs(b.perSecond() - wanted)));
    }

    /** The frames that a second of timecode counts: the rate rounded up to a whole number. */
    public int countedPerSecond() {
        return Math.floorDiv(numerator + denominator - 1, denominator);
    }

    /** Whether timecode at this rate can drop numbers: 29.97 and 59.94 only. */
    public boolean canDrop() {
        return denominator == NTSC && countedPerSecond() % 30 == 0;
    }

    /** The frame that is shown after {@code ticks} ticks of {@link StreamTime}, from 0; negative before the start. */
    public long frameAt(long ticks) {
        return Math.floorDiv(
                Math.multiplyExact(ticks, (long) numerator), (long) StreamTime.TICKS_PER_SECOND * denominator);
    }

    /** The frame whose beginning is nearest to {@code ticks}; the later one if two are equally near. */
    public long nearestFrame(long ticks) {
        long whole = (long) StreamTime.TICKS_PER_SECOND * denominator;
        return Math.floorDiv(Math.addExact(Math.multiplyExact(ticks, (long) numerator), whole / 2), whole);
    }

    /** The first tick that shows {@code frame}: {@code frameAt} of it is {@code frame}, of the tick before it is not. */
    public long ticksAt(long frame) {
        long ticks = Math.multiplyExact(Math.multiplyExact(frame, denominator), StreamTime.TICKS_PER_SECOND);
        return -Math.floorDiv(-ticks, numerator);
    }

    /** The length of {@code frames} frames, rounded up to a tick. */
    public StreamTime length(long frames) {
        return new StreamTime(ticksAt(frames));
    }

    /** Frames per second as a decimal, for display and for file formats that need one. */
    public double perSecond() {
        return (double) numerator / denominator;
    }

    /** The exact rate as a fraction: 25/1, 30000/1001. */
    public String fraction() {
        return numerator + "/" + denominator;
    }

    /** The usual name: 25, 29.97. */
    public String label() {
        if (denominator == 1) {
            return Integer.toString(numerator);
        }
        return equals(FPS_23_976) ? "23.976" : hundredths();
    }

    private String hundredths() {
        long hundredths = Math.round(100 * perSecond());
        return hundredths / 100 + "." + String.valueOf(100 + hundredths % 100).substring(1);
    }
}
