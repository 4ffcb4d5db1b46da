package org.bookholder.view.motion;

/**
 * Estimates where the voice is between two recognised words. Words arrive in ones and twos at uneven intervals, but the
 * text should glide. The estimate moves on at the rate measured so far, at most a word or two beyond the last
 * recognised word, and slows to a stop when no word follows: in a pause or an aside. Mutable. Confined to one thread.
 */
public final class PositionInterpolator {
    /** Limit of the lead over the recognised words: the word being spoken; the delay of recognition is added to it. */
    private static final double MOST_AHEAD_WORDS = 0.8;

    private static final double MOST_AHEAD_SECONDS = 0.6;

    /**
     * A step back by at most this many words may be a correction by the recogniser; it is accepted only once it has
     * lasted.
     */
    static final int SLIP_WORDS = 5;

    public static final double SLIP_SECONDS = 1.2;

    /** Typical lead: half of the word being spoken; what was spoken during the delay of recognition is added to it. */
    private static final double USUALLY_AHEAD_WORDS = 0.4;

    private static final double USUALLY_AHEAD_SECONDS = 0.23;

    /** How long after its end a word is usually recognised. */
    private static final double USUALLY_LATE_SECONDS = 0.1;

    private static final double HURRY = 0.3;
    private static final double EASING_WORDS = 0.6;
    private static final int BURST_WORDS = 8;
    private static final double PAUSE_SECONDS = 1.2;
    private static final double MEMORY_SECONDS = 8;
    private static final double PRIOR_SECONDS = 0.7;
    private static final double STEP_SECONDS = 1.0 / 240;
    private static final double SETTLING_SECONDS = 0.15;

    private double words;
    private double speed;
    private int heard;

    /** Seconds since the last word. A jump counts as a pause, because it is not known whether another word follows. */
    private double since;

    /** Seconds for which recognition has been a few words behind the accepted position; 0 if it is not. */
    private double slipping;

    /** Words per second as measured, 0 while nobody reads. */
    private double rate;

    private boolean turned;
    private boolean jumped;

    /** Words in the measured rate, weighted less the older they are. */
    private double count;

    /** Seconds in the measured rate, likewise weighted. */
    private double time;

    private PositionInterpolator() {}

    /** An interpolator at rest at a place, with no rate measured. */
    static PositionInterpolator restingAt(double words) {
        PositionInterpolator lead = new PositionInterpolator();
        lead.moveTo(words);
        return lead;
    }

    /** Moves to a place at once and rests there; the measured rate is kept. */
    void moveTo(double place) {
        words = place;
        speed = 0;
        heard = (int) Math.round(place);
        since = PAUSE_SECONDS;
        slipping = 0;
        turned = false;
        jumped = true;
    }

    /** An independent copy in the same state. */
    public PositionInterpolator copy() {
        PositionInterpolator copy = new PositionInterpolator();
        copy.words = words;
        copy.speed = speed;
        copy.heard = heard;
        copy.since = since;
        copy.slipping = slipping;
        copy.turned = turned;
        copy.jumped = jumped;
        copy.rate = rate;
        copy.count = count;
        copy.time = time;
        return copy;
    }

    /** The estimate, as a number of spoken words. */
    double words() {
        return words;
    }

    /** Speed of the estimate in words per second, 0 or more. */
    double speed() {
        return speed;
    }

    /** Number of spoken words up to the last accepted recognised word. */
    int heard() {
        return heard;
    }

    /** Words of average length that are likely to have been said since the last accepted recognised word ended. */
    double saidSince() {
        return (since + USUALLY_LATE_SECONDS) * rate;
    }

    /** Whether the last change was a step back. */
    boolean turned() {
        return turned;
    }

    /** Whether the last change was more than reading on. */
    boolean jumped() {
        return jumped;
    }

    /** Whether a step back is being held back until it has lasted. */
    boolean slips() {
        return slipping > 0;
    }

    /**
     * Advances by {@code seconds}.
     *
     * @param recognised number of spoken words up to the session's position
     * @param usual rate in words per second to assume until one has been measured
     * @param going whether somebody is reading and is being followed
     */
    public void advance(int recognised, double usual, boolean going, double seconds) {
        int news = recognised - heard;
        if (news < 0 && -news <= SLIP_WORDS && slipping + seconds < SLIP_SECONDS) {
            speed = 0;
            since += seconds;
            slipping += seconds;
            return;
        }
        if (news != 0) {
            hear(recognised, news);
        }
        slipping = 0;
        glide(usual, going, seconds);
    }

    private void hear(int recognised, int news) {
        boolean readOn = news > 0 && news <= BURST_WORDS;
        if (readOn && since < PAUSE_SECONDS) {
            double kept = Math.exp(-since / MEMORY_SECONDS);
            count = count * kept + news;
            time = time * kept + since;
        }
        words = readOn ? Math.max(words, recognised) : recognised;
        speed = readOn ? speed : 0;
        heard = recognised;
        since = readOn ? 0 : PAUSE_SECONDS;
        turned = news < 0;
        jumped = !readOn;
    }

    private void glide(double usual, boolean going, double seconds) {
        rate = going ? (count + usual * PRIOR_SECONDS) / (time + PRIOR_SECONDS) : 0;
        double left = Math.min(seconds, 1);
        while (left > 0) {
            double step = Math.min(left, STEP_SECONDS);
            double wanted = since >= PAUSE_SECONDS && words <= heard ? 0 : rate * hurry(words - heard, rate);
            speed += (wanted - speed) * (1 - Math.exp(-step / SETTLING_SECONDS));
            words = Math.max(words, Math.min(heard + mostAhead(rate), words + speed * step));
            left -= step;
        }
        since += seconds;
    }

    /** The largest lead over the recognised words at a rate in words per second. */
    static double mostAhead(double rate) {
        return MOST_AHEAD_WORDS + MOST_AHEAD_SECONDS * rate;
    }

    /** Factor on the rate: more than 1 while the estimate lags, falling to 0 at the largest lead. */
    private static double hurry(double ahead, double rate) {
        double even = 1 + HURRY * (USUALLY_AHEAD_WORDS + USUALLY_AHEAD_SECONDS * rate - ahead);
        return Math.max(0, Math.min(even, (mostAhead(rate) - ahead) / EASING_WORDS));
    }
}
