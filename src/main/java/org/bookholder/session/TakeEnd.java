package org.bookholder.session;

/** Why a take ended. */
public enum TakeEnd {
    /** Someone ended it. */
    CUT,
    /** Someone asked for the next take. */
    NEXT_TAKE,
    /** The script's text was changed: a take is of one text. */
    TEXT_CHANGED,
    /** The recording that was heard is at its end. */
    SOURCE_ENDED,
    /** Sound could no longer be taken in. */
    CAPTURE_FAILED,
    /** Another part of the program failed. */
    PROGRAM_FAILED,
    /** The program ended without ending the take; it was ended when the session was opened again. */
    BROKEN_OFF,
    /** For a reason that this version does not know. */
    OTHER
}
