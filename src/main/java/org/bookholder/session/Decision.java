package org.bookholder.session;

import org.bookholder.timing.StreamTime;

/**
 * What was decided on a line in the review.
 *
 * @param choice what is to become of it
 * @param take the take of the attempt that it is about, from 1; 0 if it is about none
 * @param ordinal that attempt's number within its take, from 1; 0 if it is about none
 * @param at audio taken in when it was decided
 */
public record Decision(Choice choice, int take, int ordinal, StreamTime at) {
    /** What can become of a line. */
    public enum Choice {
        /** It is to be read once more. */
        RECORD_AGAIN("record again"),
        /** The attempt is used as it is. */
        KEEP("keep"),
        /** The attempt is used and mended by the editor. */
        FIX_IN_EDIT("fix in the edit"),
        /** The attempt was read right; what was heard amiss was the recogniser's fault. */
        NOT_A_FAULT("not a fault");

        private final String label;

        Choice(String label) {
            this.label = label;
        }

        /** The words for it on screen and in every file. */
        public String label() {
            return label;
        }
    }

    /** Whether the line need not be recorded again. */
    public boolean settles() {
        return choice != Choice.RECORD_AGAIN;
    }
}
