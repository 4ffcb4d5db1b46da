package org.bookholder.session;

/**
 * Something that is wrong now, or that whoever is at the window has to know now.
 *
 * @param kind what it is
 * @param detail its cause as the device or disk told it, or an address; empty if there is no more to tell
 */
public record Trouble(Kind kind, String detail) {
    /** What can be wrong, in the order in which it is told. */
    public enum Kind {
        /** Events cannot be written to the journal. */
        NOT_SAVED,
        /** The script was saved during a take; its text is read from the next hold on. */
        TEXT_WAITS,
        /** The text that was saved is no script; the text before stays. */
        TEXT_UNUSABLE,
        /** The text being read could not be kept in the session's folder. */
        TEXT_NOT_KEPT,
        /** The microphone is gone; the take goes on by hand. */
        NO_SOUND,
        /** The take's audio can no longer be written. */
        NOT_RECORDED,
        /** Speech recognition has failed and is being started again. */
        EAR_RESTARTS,
        /** Speech recognition has failed for the rest of the take. */
        EAR_LOST,
        /** The recognition that checks what was read has failed and is being started again. */
        CHECK_RESTARTS,
        /** The recognition that checks what was read has failed for the rest of the take. */
        CHECK_LOST,
        /** The desk's pages are not told of anything for a moment. */
        DESK_RESTARTS,
        /** The desk's pages are told of nothing more. */
        DESK_LOST,
        /** The reading window is being opened again. */
        WINDOW_RESTARTS,
        /** There is no reading window any more. */
        WINDOW_LOST,
        /** A saved script is not noticed any more. */
        SCRIPT_NOT_WATCHED,
        /** The sound is not measured any more, nor are spoiled lines marked. */
        SOUND_NOT_WATCHED,
        /** Another part of the program has failed; the detail is its name. */
        PART_LOST,
        /** Nothing is wrong: the desk can be opened, at the address that is the detail. */
        DESK_READY
    }
}
