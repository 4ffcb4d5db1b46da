package org.bookholder.follow.judge;

/**
 * How sure it is that a word that was called was not read as written: a logistic regression over what told true calls
 * from false ones in readings with known deviations.
 *
 * <p>Its weights are of 300 called words of ten readers. Predicted for each reader from the nine others, of the words
 * called below 0.6, from 0.6, 0.8 and 0.9 on, 0.31, 0.68, 0.85 and 0.95 were called rightly (decision note 0028).
 */
final class Certainty {
    private static final double CONSTANT = 0.16;
    private static final double SOUND = 3.59;
    private static final double SEVERAL = -2.03;
    private static final double SLIPS = -3.4;

    private Certainty() {}

    /**
     * The probability that a call is right, 0 to 1.
     *
     * @param sound how far what was said is from the word by sound, 0 to 1; 1 if nothing was said
     * @param several whether other words of the same reading are called too
     * @param slipsPerReading how many words a reading the script ear loses of this reader although they are read
     */
    static double of(double sound, boolean several, double slipsPerReading) {
        double logit = CONSTANT + SOUND * sound + (several ? SEVERAL : 0) + SLIPS * slipsPerReading;
        return 1 / (1 + Math.exp(-logit));
    }
}
