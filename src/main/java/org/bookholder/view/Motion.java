package org.bookholder.view;

/**
 * How the text moves: a critically damped glide after an aim, as a value that depends on nothing but the time that
 * passes and the aim.
 *
 * <p>Following the voice it is soft. A jump of a few rows is a quick and deliberate glide that has come to rest in
 * 0.4 s. A longer jump does not race through the text between: the text dims, is exchanged while nothing is seen of
 * it, and glides the last row and a quarter into place, from the side that it came from. Heights are in pixels, times in
 * seconds.
 *
 * @param at height at the eye-line
 * @param speed pixels a second, positive when the text moves up
 * @param aim the height it glides to
 * @param sinceJump seconds since the aim jumped
 * @param leap seconds since a long jump began; negative when there is none
 */
public record Motion(double at, double speed, double aim, double sinceJump, double leap) {
    /** Rows from which on a jump is a long one. */
    static final double LEAP_ROWS = 3.2;

    /** Seconds that a long jump takes to dim, and to be bright again. */
    static final double DIM_SECONDS = 0.12;

    static final double BRIGHT_SECONDS = 0.36;

    /** Natural frequency in 1/s when following: the text lags 2/3.6 s behind an even aim, a sixth of a row. */
    static final double SOFT = 3.6;

    /** Natural frequency in 1/s after a jump: within 2 % of the way left after 0.37 s. */
    static final double QUICK = 16;

    private static final double JUMP_ROWS = 1.2;
    private static final double QUICK_SECONDS = 0.4;
    private static final double EASING_SECONDS = 0.25;
    private static final double STEP_SECONDS = 1.0 / 240;
    private static final double LONG_AGO = 100;
    private static final double LAST_ROWS = 1.25;

    /** At rest. */
    public static Motion restingAt(double height) {
        return new Motion(height, 0, height, LONG_AGO, -1);
    }

    /**
     * The motion {@code seconds} later.
     *
     * @param newAim the height to glide to from now on
     * @param seconds time that has passed, 0 or more; a stall of more than a second counts as one second
     * @param pitch distance from row to row
     */
    public Motion after(double newAim, double seconds, double pitch) {
        Motion moved = aimedAt(newAim, pitch);
        double left = Math.min(seconds, 1);
        while (left > 0) {
            double step = Math.min(left, STEP_SECONDS);
            moved = moved.step(step, pitch);
            left -= step;
        }
        return moved;
    }

    /** How much of the text's light is taken away, 0 none to 1 all. */
    public double veil() {
        if (leap < 0) {
            return 0;
        }
        if (leap < DIM_SECONDS) {
            return smooth(leap / DIM_SECONDS);
        }
        return 1 - smooth((leap - DIM_SECONDS) / (BRIGHT_SECONDS - DIM_SECONDS));
    }

    private Motion aimedAt(double newAim, double pitch) {
        double change = Math.abs(newAim - aim);
        if (change < JUMP_ROWS * pitch) {
            return new Motion(at, speed, newAim, sinceJump, leap);
        }
        boolean dimmed = leap >= 0 && leap < DIM_SECONDS;
        if (dimmed) {
            return new Motion(at, speed, newAim, 0, leap);
        }
        boolean far = Math.abs(newAim - at) > LEAP_ROWS * pitch;
        return new Motion(at, speed, newAim, 0, far ? dimmedAs(veil()) : leap);
    }

    /** The moment of a leap's first part at which the text is as dim as {@code veil}, so that it never turns bright. */
    private static double dimmedAs(double veil) {
        double low = 0;
        double high = 1;
        for (int i = 0; i < 30; i++) {
            double middle = (low + high) / 2;
            if (smooth(middle) < veil) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return Math.min(low * DIM_SECONDS, DIM_SECONDS - 1e-6);
    }

    private Motion step(double seconds, double pitch) {
        boolean waits = leap >= 0 && leap < DIM_SECONDS;
        double leaped = leap < 0 ? leap : leap + seconds;
        Motion moved = glide(waits ? at : aim, waits ? QUICK : stiffness(), seconds);
        if (waits && leaped >= DIM_SECONDS) {
            double side = Math.signum(aim - at);
            return new Motion(aim - side * LAST_ROWS * pitch, 0, aim, 0, leaped);
        }
        return new Motion(
                moved.at,
                moved.speed,
                aim,
                Math.min(LONG_AGO, sinceJump + seconds),
                leaped > BRIGHT_SECONDS ? -1 : leaped);
    }

    private double stiffness() {
        double over = Math.max(0, sinceJump - QUICK_SECONDS);
        return SOFT + (QUICK - SOFT) * Math.exp(-over / EASING_SECONDS);
    }

    /** The exact course of a critically damped spring. */
    private Motion glide(double to, double stiffness, double seconds) {
        double away = at - to;
        double pull = speed + stiffness * away;
        double decay = Math.exp(-stiffness * seconds);
        double newAway = (away + pull * seconds) * decay;
        double newSpeed = (speed - stiffness * pull * seconds) * decay;
        return new Motion(to + newAway, newSpeed, aim, sinceJump, leap);
    }

    private static double smooth(double share) {
        double s = Math.max(0, Math.min(1, share));
        return s * s * (3 - 2 * s);
    }
}
