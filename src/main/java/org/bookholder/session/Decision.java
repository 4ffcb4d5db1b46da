package org.bookholder.session;

import org.bookholder.timing.StreamTime;

/**
 * A decision about a line in the review.
 *
 * @param choice what should happen to the line
 * @param take take of the attempt that it concerns, from 1; 0 if it concerns none
 * @param ordinal number of that attempt within its take, from 1; 0 if it concerns none
 * @param at audio captured when it was made
 */
public record Decision(Choice choice, int take, int ordinal, StreamTime at) {
    /** What can be decided about a line. */
    public enum Choice {
        /** The line should be read again. */
        RECORD_AGAIN,
        /** The attempt is used as it is. */
        KEEP,
        /** The attempt is used, and the editor fixes it. */
        FIX_IN_EDIT,
        /** The attempt was read correctly; the recogniser was wrong. */
        NOT_A_FAULT,
        /** The lesson goes out without the line, on purpose. */
        LEAVE_OUT
    }

    /** Whether the line need not be recorded again. */
    public boolean settles() {
        return choice != Choice.RECORD_AGAIN;
    }
}
