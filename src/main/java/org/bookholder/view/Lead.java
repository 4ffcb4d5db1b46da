package org.bookholder.view;

/**
 * Where the voice is between two recognised words. Words come in ones and twos and at uneven intervals; the text is to
 * glide. So the place goes on at the rate measured so far, no further than the next word or two ahead of what was
 * recognised, and comes to rest softly when no word follows: in a pause, and during an aside.
 *
 * @param words spoken words up to the place
 * @param speed at which it moves, in words a second, 0 or more
 * @param heard spoken words up to the last recognised one, as accepted
 * @param since seconds since then; after a jump as after a pause, for the next word is not known to follow
 * @param slipping seconds for which recognition has stood a few words behind what was accepted; 0 if it does not
 * @param turned whether the last change was a step back
 * @param jumped whether the last change was more than reading on
 * @param count words of the measured rate, faded with time
 * @param time seconds of the measured rate, likewise
 */
record Lead(
        double words,
        double speed,
        int heard,
        double since,
        double slipping,
        boolean turned,
        boolean jumped,
        double count,
        double time) {
    /** How far ahead of the recognised words the place can be: a word on the tongue, and what recognition takes. */
    private static final double MOST_AHEAD_WORDS = 0.8;

    private static final double MOST_AHEAD_SECONDS = 0.6;

    /** A step back by no more words than this may be a revision; it is believed when it has lasted. */
    static final int SLIP_WORDS = 5;

    static final double SLIP_SECONDS = 1.2;

    /** How far ahead it usually is: half of the word being spoken, and what was spoken since it was recognised. */
    private static final double USUALLY_AHEAD_WORDS = 0.4;

    private static final double USUALLY_AHEAD_SECONDS = 0.22;
    private static final double HURRY = 0.45;
    private static final double EASING_WORDS = 0.6;
    private static final int BURST_WORDS = 8;
    private static final double PAUSE_SECONDS = 1.2;
    private static final double MEMORY_SECONDS = 8;
    private static final double PRIOR_SECONDS = 0.7;
    private static final double STEP_SECONDS = 1.0 / 240;
    private static final double SETTLING_SECONDS = 0.15;

    /** At rest at a place. */
    static Lead restingAt(double words) {
        return new Lead(words, 0, (int) Math.round(words), PAUSE_SECONDS, 0, false, true, 0, 0);
    }

    /** The same measure of the rate, at rest at another place. */
    Lead movedTo(double place) {
        return new Lead(place, 0, (int) Math.round(place), PAUSE_SECONDS, 0, false, true, count, time);
    }

    /**
     * The place {@code seconds} later.
     *
     * @param recognised spoken words up to the position that the session shows
     * @param usual words a second to go by until some have been measured
     * @param going whether somebody reads and is followed
     */
    Lead after(int recognised, double usual, boolean going, double seconds) {
        int news = recognised - heard;
        if (news < 0 && -news <= SLIP_WORDS && slipping + seconds < SLIP_SECONDS) {
            return new Lead(words, 0, heard, since + seconds, slipping + seconds, turned, jumped, count, time);
        }
        Lead heardNow = news == 0 ? this : hearing(recognised, news);
        return heardNow.glide(usual, going, seconds);
    }

    /** Whether a step back is not believed yet. */
    boolean slips() {
        return slipping > 0;
    }

    private Lead hearing(int recognised, int news) {
        boolean readOn = news > 0 && news <= BURST_WORDS;
        boolean measured = readOn && since < PAUSE_SECONDS;
        double kept = measured ? Math.exp(-since / MEMORY_SECONDS) : 1;
        return new Lead(
                readOn ? Math.max(words, recognised) : recognised,
                readOn ? speed : 0,
                recognised,
                readOn ? 0 : PAUSE_SECONDS,
                0,
                news < 0,
                !readOn,
                measured ? count * kept + news : count,
                measured ? time * kept + since : time);
    }

    private Lead glide(double usual, boolean going, double seconds) {
        double rate = going ? (count + usual * PRIOR_SECONDS) / (time + PRIOR_SECONDS) : 0;
        double place = words;
        double moving = speed;
        double left = Math.min(seconds, 1);
        while (left > 0) {
            double step = Math.min(left, STEP_SECONDS);
            double wanted = since >= PAUSE_SECONDS && place <= heard ? 0 : rate * hurry(place - heard, rate);
            moving += (wanted - moving) * (1 - Math.exp(-step / SETTLING_SECONDS));
            place = Math.max(place, Math.min(heard + mostAhead(rate), place + moving * step));
            left -= step;
        }
        return new Lead(place, moving, heard, since + seconds, 0, turned, jumped, count, time);
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
