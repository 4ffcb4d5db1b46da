package org.bookholder.view;

/**
 * Where the text is to be, and how it is to get there.
 *
 * @param height the height that belongs at the eye-line, in pixels from the layout's top
 * @param speed how fast that height moves on, in pixels a second
 * @param stiffness natural frequency of the glide to it, in 1/s
 * @param jumps whether a change of more than a row is a jump, to be made quickly; otherwise it is reading on
 * @param waits whether the text waits, rather than turn back, when it has come up to a row too far
 */
record Aim(double height, double speed, double stiffness, boolean jumps, boolean waits) {
    /** Natural frequency when following: an error of the estimate is halved in half a second. */
    static final double SOFT = 5;

    /** Natural frequency when moved by hand: what a hand does is seen at once. */
    static final double BRISK = 10;

    /** Led by the voice or a steady pace. */
    static Aim led(double height, double speed, boolean jumps, boolean waits) {
        return new Aim(height, speed, SOFT, jumps, waits);
    }

    /** Put there by a hand. */
    static Aim put(double height) {
        return new Aim(height, 0, BRISK, true, false);
    }
}
