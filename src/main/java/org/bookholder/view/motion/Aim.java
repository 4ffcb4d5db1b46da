package org.bookholder.view.motion;

/**
 * Where the text is to be, and how it is to get there. Changed in place, for each picture has a new one. Confined to one
 * thread.
 */
public final class Aim {
    /** Natural frequency when following: an error of the estimate is halved in a third of a second. */
    static final double SOFT = 5;

    /** The same for each word a second of a quick reading, in which a row passes the sooner. */
    private static final double SOFT_PER_RATE = 2.73;

    private static final double FIRMEST = 14;

    /** Natural frequency when moved by hand: what a hand does is seen at once. */
    static final double BRISK = 10;

    private double height;
    private double speed;
    private double stiffness = BRISK;
    private boolean jumps = true;
    private boolean waits;

    /**
     * Led by the voice or a steady pace.
     *
     * @param to the height that belongs at the eye-line, in pixels from the layout's top
     * @param moving how fast that height moves on, in pixels a second
     * @param rate of the reading in words a second
     * @param jumping whether a change of more than a row is a jump, to be made quickly; otherwise it is reading on
     * @param waiting whether the text waits, rather than turn back, when it has come up to a row too far
     */
    Aim lead(double to, double moving, double rate, boolean jumping, boolean waiting) {
        height = to;
        speed = moving;
        stiffness = Math.min(FIRMEST, Math.max(SOFT, SOFT_PER_RATE * rate));
        jumps = jumping;
        waits = waiting;
        return this;
    }

    /** Put at a height by a hand. */
    Aim put(double to) {
        height = to;
        speed = 0;
        stiffness = BRISK;
        jumps = true;
        waits = false;
        return this;
    }

    /** In pixels from the layout's top. */
    public double height() {
        return height;
    }

    /** In pixels a second. */
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

    /** Whether the text waits rather than turn back. */
    boolean waits() {
        return waits;
    }
}
