package org.bookholder.view.motion;

/**
 * Where the voice is between two recognised words. Words come in ones and twos and at uneven intervals; the text is to
 * glide. So the place goes on at the rate measured so far, no further than the next word or two ahead of what was
 * recognised, and comes to rest softly when no word follows: in a pause, and during an aside. Changed in place. Confined to
 * one thread.
 */
public final class PositionInterpolator {
    /** How far ahead of the recognised words the place can be: a word on the tongue, and what recognition takes. */
    private static final double MOST_AHEAD_WORDS = 0.8;

    private static final double MOST_AHEAD_SECONDS = 0.6;

    /** A step back by no more words than this may be a revision; it is believed when it has lasted. */
    static final int SLIP_WORDS = 5;

    public static final double SLIP_SECONDS = 1.2;

    /** How far ahead it usually is: half of the word being spoken, and what was spoken since it was recognised. */
    private static final double USUALLY_AHEAD_WORDS = 0.4;

    private static final double USUALLY_AHEAD_SECONDS = 0.23;
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

    /** Seconds since the last word; after a jump as after a pause, for the next word is not known to follow. */
    private double since;

    /** Seconds for which recognition has stood a few words behind what was accepted; 0 if it does not. */
    private double slipping;

    private boolean turned;
    private boolean jumped;

    /** Words of the measured rate, faded with time. */
    private double count;

    /** Seconds of the measured rate, likewise. */
    private double time;

    private PositionInterpolator() {}

    /** At rest at a place, with nothing measured. */
    static PositionInterpolator restingAt(double words) {
        PositionInterpolator lead = new PositionInterpolator();
        lead.moveTo(words);
        return lead;
    }

    /** Comes to rest at a place at once; what was measured of the rate is kept. */
    void moveTo(double place) {
        words = place;
        speed = 0;
        heard = (int) Math.round(place);
        since = PAUSE_SECONDS;
        slipping = 0;
        turned = false;
        jumped = true;
    }

    /** Another one that goes on from here. */
    public PositionInterpolator copy() {
        PositionInterpolator copy = new PositionInterpolator();
        copy.words = words;
        copy.speed = speed;
        copy.heard = heard;
        copy.since = since;
        copy.slipping = slipping;
        copy.turned = turned;
        copy.jumped = jumped;
        copy.count = count;
        copy.time = time;
        return copy;
    }

    /** Spoken words up to the place. */
    double words() {
        return words;
    }

    /** At which it moves, in words a second, 0 or more. */
    double speed() {
        return speed;
    }

    /** Spoken words up to the last recognised one, as accepted. */
    int heard() {
        return heard;
    }

    /** Whether the last change was a step back. */
    boolean turned() {
        return turned;
    }

    /** Whether the last change was more than reading on. */
    boolean jumped() {
        return jumped;
    }

    /** Whether a step back is not believed yet. */
    boolean slips() {
        return slipping > 0;
    }

    /**
     * Goes on for {@code seconds}.
     *
     * @param recognised spoken words up to the position that the session shows
     * @param usual words a second to go by until some have been measured
     * @param going whether somebody reads and is followed
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
        double rate = going ? (count + usual * PRIOR_SECONDS) / (time + PRIOR_SECONDS) : 0;
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

    /** How far ahead of the recognised words the place can be at a rate in words a second. */
    static double mostAhead(double rate) {
        return MOST_AHEAD_WORDS + MOST_AHEAD_SECONDS * rate;
    }

    /** By how much of the rate the place goes on: more while it lags behind the next word, none at its limit. */
    private static double hurry(double ahead, double rate) {
        double even = 1 + HURRY * (USUALLY_AHEAD_WORDS + USUALLY_AHEAD_SECONDS * rate - ahead);
        return Math.max(0, Math.min(even, (mostAhead(rate) - ahead) / EASING_WORDS));
    }
}
