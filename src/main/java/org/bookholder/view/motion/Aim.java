package org.bookholder.view.motion;

/**
 * Where the text should be, and how it should get there. Mutable, because it changes with every picture. Confined to
 * one thread.
 */
public final class Aim {
    /** Natural frequency while following, in 1/s: an error of the estimate is halved in a third of a second. */
    static final double SOFT = 5;

    /** The same for each word per second of a fast reading, in which rows pass sooner. */
    private static final double SOFT_PER_RATE = 2.73;

    private static final double FIRMEST = 14;

    /** Natural frequency when moved by hand, in 1/s: the result is seen at once. */
    static final double BRISK = 10;

    private double height;
    private double speed;
    private double stiffness = BRISK;
    private boolean jumps = true;
    private boolean waits;

    /**
     * Sets an aim that the voice or a steady pace leads.
     *
     * @param to the height to place at the eye-line, in pixels from the layout's top
     * @param moving speed of that height in pixels per second
     * @param rate reading rate in words per second
     * @param jumping whether a change of more than a row is a jump, to be made quickly; otherwise it counts as reading
     *     on
     * @param waiting whether the text waits instead of moving back when it is up to a row too far ahead
     */
    Aim lead(double to, double moving, double rate, boolean jumping, boolean waiting) {
        height = to;
        speed = moving;
        stiffness = Math.min(FIRMEST, Math.max(SOFT, SOFT_PER_RATE * rate));
        jumps = jumping;
        waits = waiting;
        return this;
    }

    /** Sets an aim chosen by hand. */
    Aim put(double to) {
        height = to;
        speed = 0;
        stiffness = BRISK;
        jumps = true;
        waits = false;
        return this;
    }

    /** Height to place at the eye-line, in pixels from the layout's top. */
    public double height() {
        return height;
    }

    /** Speed of that height, in pixels per second. */
    double speed() {
        return speed;
    }

    /** Natural frequency of the glide to it, in 1/s. */
    double stiffness() {
        return stiffness;
    }

    /** Whether a change of more than a row is a jump. */
    boolean jumps() {
        return jumps;
    }

    /** Whether the text waits instead of moving back. */
    boolean waits() {
        return waits;
    }
}
