package org.bookholder.view;

/**
 * How the text moves: a critically damped glide after an aim, as a value that depends on nothing but the time that
 * passes and the aim. The glide is fed with the aim's own speed, so that it does not lag behind an even reading.
 *
 * <p>Led by the voice it is soft, a little firmer over the gap before a paragraph, and where it has come a little too far
 * it waits and does not turn back. A jump of a few
 * rows is a quick and deliberate glide that has come to rest in 0.4 s. A longer jump does not race through the text
 * between: the text dims, is exchanged while nothing is seen of it, and glides the last row and a quarter into place, from
 * the side that it came from. Heights are in pixels, times in seconds.
 *
 * @param at height at the eye-line
 * @param speed pixels a second, positive when the text moves up
 * @param aim the height it glides to
 * @param since seconds since the aim changed by more than a glide
 * @param boost natural frequency in 1/s of the glide from then on, until it has eased
 * @param leap seconds since a long jump began; negative when there is none
 */
public record Motion(double at, double speed, double aim, double since, double boost, double leap) {
    /** Rows from which on a jump is a long one. */
    static final double LEAP_ROWS = 3.2;

    /** Seconds that a long jump takes to dim, and to be bright again. */
    static final double DIM_SECONDS = 0.12;

    static final double BRIGHT_SECONDS = 0.36;

    /** Natural frequency in 1/s after a jump: within 2 % of the way left after 0.37 s. */
    static final double QUICK = 16;

    /** Natural frequency in 1/s over a gap in the text. */
    static final double FIRM = 14;

    private static final double JUMP_ROWS = 1.2;
    private static final double GAP_ROWS = 0.5;
    private static final double WAIT_ROWS = 1;
    private static final double QUICK_SECONDS = 0.4;
    private static final double EASING_SECONDS = 0.25;
    private static final double STEP_SECONDS = 1.0 / 240;
    private static final double LONG_AGO = 100;
    private static final double LAST_ROWS = 1.25;

    /** At rest. */
    public static Motion restingAt(double height) {
        return new Motion(height, 0, height, LONG_AGO, 0, -1);
    }

    /**
     * The motion {@code seconds} later.
     *
     * @param newAim where the text is to be by then
     * @param seconds time that has passed, 0 or more; a stall of more than a second counts as one second
     * @param pitch distance from row to row
     */
    Motion after(Aim newAim, double seconds, double pitch) {
        Motion moved = aimedAt(newAim, pitch);
        double left = Math.min(seconds, 1);
        while (left > 0) {
            double step = Math.min(left, STEP_SECONDS);
            left -= step;
            moved = moved.step(newAim, newAim.height() - newAim.speed() * left, step, pitch);
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

    private Motion aimedAt(Aim wanted, double pitch) {
        double change = Math.abs(wanted.height() - aim);
        if (wanted.jumps() && change >= JUMP_ROWS * pitch) {
            return jumpedTo(wanted.height(), pitch);
        }
        boolean gap = !wanted.jumps() && change >= GAP_ROWS * pitch;
        return gap
                ? new Motion(at, speed, wanted.height(), 0, FIRM, leap)
                : new Motion(at, speed, wanted.height(), since, boost, leap);
    }

    private Motion jumpedTo(double height, double pitch) {
        boolean dimmed = leap >= 0 && leap < DIM_SECONDS;
        boolean far = Math.abs(height - at) > LEAP_ROWS * pitch;
        return new Motion(at, speed, height, 0, QUICK, far && !dimmed ? dimmedAs(veil()) : leap);
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

    private Motion step(Aim wanted, double to, double seconds, double pitch) {
        double leaped = leap < 0 ? leap : leap + seconds;
        double later = Math.min(LONG_AGO, since + seconds);
        if (leap >= 0 && leap < DIM_SECONDS) {
            if (leaped >= DIM_SECONDS) {
                double side = Math.signum(aim - at);
                return new Motion(aim - side * LAST_ROWS * pitch, 0, aim, 0, QUICK, leaped);
            }
            return glide(at, 0, QUICK, seconds, since, leaped);
        }
        leaped = leaped > BRIGHT_SECONDS ? -1 : leaped;
        Motion moved = glide(to, wanted.speed(), stiffness(wanted), seconds, later, leaped);
        boolean turns = (moved.speed < 0 || moved.at < at) && speed >= 0;
        return turns && wanted.waits() && at - to < WAIT_ROWS * pitch
                ? new Motion(at, 0, aim, later, boost, leaped)
                : moved;
    }

    private double stiffness(Aim wanted) {
        double over = Math.max(0, since - QUICK_SECONDS);
        double more = Math.max(0, boost - wanted.stiffness());
        return wanted.stiffness() + more * Math.exp(-over / EASING_SECONDS);
    }

    /** The exact course of a critically damped spring whose far end moves evenly and arrives at {@code to}. */
    private Motion glide(double to, double pace, double stiffness, double seconds, double later, double leaped) {
        double away = at - (to - pace * seconds);
        double pull = speed - pace + stiffness * away;
        double decay = Math.exp(-stiffness * seconds);
        double newAway = (away + pull * seconds) * decay;
        double newSpeed = pace + (speed - pace - stiffness * pull * seconds) * decay;
        return new Motion(to + newAway, newSpeed, aim, later, boost, leaped);
    }

    private static double smooth(double share) {
        double s = Math.max(0, Math.min(1, share));
        return s * s * (3 - 2 * s);
    }
}
