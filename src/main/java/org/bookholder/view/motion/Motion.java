package org.bookholder.view.motion;

/**
 * The motion of the text: a critically damped spring follows an aim. It depends only on the aim and the elapsed time.
 * The spring takes the aim's own speed into account, so that it does not lag behind an even reading.
 *
 * <p>When the voice leads, the spring is soft, and a little firmer across the gap before a paragraph; if the text is
 * slightly too far ahead it waits instead of moving back. A jump of a few rows is a quick glide that comes to rest in
 * 0.4 s. A longer jump does not race through the text in between: the text fades out, is replaced while invisible, and
 * glides the last row and a quarter into place from the side it came from. Heights are in pixels, times in seconds.
 * Mutable, so that pictures create no garbage. Confined to one thread.
 */
public final class Motion {
    /** A jump of at least this many rows is a long one. */
    public static final double LEAP_ROWS = 3.2;

    /** Seconds in which the text fades out in a long jump, and again in which it fades in. */
    static final double DIM_SECONDS = 0.12;

    static final double BRIGHT_SECONDS = 0.36;

    /** Natural frequency in 1/s after a jump: after 0.37 s less than 2 % of the way is left. */
    public static final double QUICK = 16;

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

    private double at;
    private double speed;
    private double aim;

    /** Seconds since the aim last changed by more than gradual reading. */
    private double since;

    /** Natural frequency in 1/s from then on, until it has eased. */
    private double boost;

    /** Seconds since a long jump began; negative when there is none. */
    private double leap;

    private Motion() {}

    /** A motion at rest at a height. */
    public static Motion restingAt(double height) {
        Motion motion = new Motion();
        motion.restAt(height);
        return motion;
    }

    /** Comes to rest at a height at once. */
    public void restAt(double height) {
        at = height;
        speed = 0;
        aim = height;
        since = LONG_AGO;
        boost = 0;
        leap = -1;
    }

    /** An independent copy in the same state. */
    public Motion copy() {
        Motion copy = new Motion();
        copy.at = at;
        copy.speed = speed;
        copy.aim = aim;
        copy.since = since;
        copy.boost = boost;
        copy.leap = leap;
        return copy;
    }

    /** Height at the eye-line. */
    public double at() {
        return at;
    }

    /** Pixels a second, positive when the text moves up. */
    public double speed() {
        return speed;
    }

    /** Seconds since a long jump began; negative when there is none. */
    double leap() {
        return leap;
    }

    /**
     * Advances the motion.
     *
     * @param wanted where the text should be by then
     * @param seconds elapsed time, 0 or more; a stall of more than a second counts as one second
     * @param pitch distance between rows
     */
    public void advance(Aim wanted, double seconds, double pitch) {
        take(wanted, pitch);
        double left = Math.min(seconds, 1);
        while (left > 0) {
            double step = Math.min(left, STEP_SECONDS);
            left -= step;
            step(wanted, wanted.height() - wanted.speed() * left, step, pitch);
        }
    }

    /** How far the text has faded, 0 (fully visible) to 1 (invisible). */
    public double veil() {
        if (leap < 0) {
            return 0;
        }
        if (leap < DIM_SECONDS) {
            return smooth(leap / DIM_SECONDS);
        }
        return 1 - smooth((leap - DIM_SECONDS) / (BRIGHT_SECONDS - DIM_SECONDS));
    }

    private void take(Aim wanted, double pitch) {
        double change = Math.abs(wanted.height() - aim);
        aim = wanted.height();
        if (wanted.jumps() && change >= JUMP_ROWS * pitch) {
            boolean dimmed = leap >= 0 && leap < DIM_SECONDS;
            boolean far = Math.abs(aim - at) > LEAP_ROWS * pitch;
            leap = far && !dimmed ? dimmedAs(veil()) : leap;
            since = 0;
            boost = QUICK;
        } else if (!wanted.jumps() && change >= GAP_ROWS * pitch) {
            since = 0;
            boost = FIRM;
        }
    }

    /** The time in the fade-out at which the text is as dim as {@code veil}, so that a new jump never brightens it. */
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

    private void step(Aim wanted, double to, double seconds, double pitch) {
        if (leap >= 0 && leap < DIM_SECONDS) {
            leap += seconds;
            if (leap < DIM_SECONDS) {
                glide(at, 0, QUICK, seconds);
                return;
            }
            at = aim - Math.signum(aim - at) * LAST_ROWS * pitch;
            speed = 0;
            since = 0;
            boost = QUICK;
            return;
        }
        leap = leap < 0 || leap + seconds > BRIGHT_SECONDS ? -1 : leap + seconds;
        double before = at;
        double speedBefore = speed;
        glide(to, wanted.speed(), stiffness(wanted), seconds);
        since = Math.min(LONG_AGO, since + seconds);
        boolean turns = (speed < 0 || at < before) && speedBefore >= 0;
        if (turns && wanted.waits() && before - to < WAIT_ROWS * pitch) {
            at = before;
            speed = 0;
        }
    }

    private double stiffness(Aim wanted) {
        double over = Math.max(0, since - QUICK_SECONDS);
        double more = Math.max(0, boost - wanted.stiffness());
        return wanted.stiffness() + more * Math.exp(-over / EASING_SECONDS);
    }

    /** Exact solution for a critically damped spring whose far end moves at an even speed and arrives at {@code to}. */
    private void glide(double to, double pace, double stiffness, double seconds) {
        double away = at - (to - pace * seconds);
        double pull = speed - pace + stiffness * away;
        double decay = Math.exp(-stiffness * seconds);
        at = to + (away + pull * seconds) * decay;
        speed = pace + (speed - pace - stiffness * pull * seconds) * decay;
    }

    private static double smooth(double share) {
        double s = Math.max(0, Math.min(1, share));
        return s * s * (3 - 2 * s);
    }
}
