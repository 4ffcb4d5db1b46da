package org.bookholder.speech;

import org.bookholder.timing.StreamTime;

/**
 * A word that a recogniser heard.
 *
 * @param text lower case; {@value #UNKNOWN} for speech outside the script ear's grammar
 * @param start when it begins
 * @param end when it ends, not before its start
 * @param confidence the recogniser's own confidence, 0 to 1
 */
public record RecognizedWord(String text, StreamTime start, StreamTime end, double confidence) {
    /** What the script ear writes for speech that is not in its grammar. */
    public static final String UNKNOWN = "[unk]";

    /** Checks the order of the times and the range of the confidence. */
    public RecognizedWord {
        if (end.isBefore(start)) {
            throw new IllegalArgumentException("end (" + end + ") must not lie before start (" + start + ")");
        }
        if (!(confidence >= 0 && confidence <= 1)) {
            throw new IllegalArgumentException("confidence (" + confidence + ") must be from 0 to 1");
        }
    }

    /** Whether this is speech outside the grammar. */
    public boolean unknown() {
        return text.equals(UNKNOWN);
    }
}
