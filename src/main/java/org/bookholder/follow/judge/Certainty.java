package org.bookholder.follow.judge;

/**
 * Estimates how certain it is that a reported word was not read as written. It is a logistic regression over the
 * features that separated true reports from false ones in readings with known deviations.
 *
 * <p>Its weights were fitted to 300 reported words of ten readers. When each reader was predicted from the other nine,
 * the share of correct reports was 0.31 for certainties below 0.6, 0.68 from 0.6, 0.85 from 0.8 and 0.95 from 0.9
 * (decision note 0028).
 */
final class Certainty {
    private static final double CONSTANT = 0.16;
    private static final double SOUND = 3.59;
    private static final double SEVERAL = -2.03;
    private static final double SLIPS = -3.4;

    private Certainty() {}

    /**
     * The probability that a report is right, 0 to 1.
     *
     * @param sound how different from the word the heard words sound, 0 to 1; 1 if nothing was said
     * @param several whether other words of the same reading are reported too
     * @param slipsPerReading how many words per reading the script ear misses on average although this reader did read
     *     them
     */
    static double of(double sound, boolean several, double slipsPerReading) {
        double logit = CONSTANT + SOUND * sound + (several ? SEVERAL : 0) + SLIPS * slipsPerReading;
        return 1 / (1 + Math.exp(-logit));
    }
}
