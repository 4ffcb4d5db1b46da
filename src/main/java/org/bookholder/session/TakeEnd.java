package org.bookholder.session;

/** Why a take ended. */
public enum TakeEnd {
    /** Someone ended it. */
    CUT,
    /** Someone asked for the next take. */
    NEXT_TAKE,
    /** The script's text changed; a take is always of one text. */
    TEXT_CHANGED,
    /** The recording used as input has ended. */
    SOURCE_ENDED,
    /** Sound could no longer be captured. */
    CAPTURE_FAILED,
    /** Another part of the program failed. */
    PROGRAM_FAILED,
    /** The program ended without ending the take; it was ended when the session was opened again. */
    BROKEN_OFF,
    /** A reason that this version does not know. */
    OTHER
}
