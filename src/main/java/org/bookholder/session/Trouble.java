package org.bookholder.session;

/**
 * Something that is wrong now, or that the person at the window has to know now.
 *
 * @param kind what it is
 * @param detail its cause as reported by the device or disk, or an address; empty if there are no details
 */
public record Trouble(Kind kind, String detail) {
    /** What can be wrong, in the order in which troubles are shown. */
    public enum Kind {
        /** Events cannot be written to the journal. */
        NOT_SAVED,
        /** One event can never be written to the journal; the others are. */
        ONE_NOT_SAVED,
        /** The script was saved during a take; the new text is used from the next hold on. */
        TEXT_WAITS,
        /** The saved text is not a valid script; the text before stays in use. */
        TEXT_UNUSABLE,
        /** The text being read could not be saved in the session's folder. */
        TEXT_NOT_KEPT,
        /** The microphone was lost; the take continues by hand. */
        NO_SOUND,
        /** Sound comes from another microphone than the one that the take began with. */
        OTHER_MICROPHONE,
        /** The take's audio cannot be written for now. */
        NOT_RECORDED,
        /** The machine is too busy: the position is more than half a second behind the voice. */
        BEHIND,
        /** The presenter's words are understood so badly that single misread words can't be told; {@code detail}: how many in a hundred. */
        HEARD_BADLY,
        /** Speech recognition has failed and is being restarted. */
        EAR_RESTARTS,
        /** Speech recognition has failed for the rest of the take. */
        EAR_LOST,
        /** The recogniser that checks what was read has failed and is being restarted. */
        CHECK_RESTARTS,
        /** The recogniser that checks what was read has failed for the rest of the take. */
        CHECK_LOST,
        /** The desk's pages get no updates for a moment. */
        DESK_RESTARTS,
        /** The desk's pages get no more updates. */
        DESK_LOST,
        /** The reading window has failed and is being reopened. */
        WINDOW_RESTARTS,
        /** The reading window has failed for good. */
        WINDOW_LOST,
        /** Saved changes of the script are no longer noticed. */
        SCRIPT_NOT_WATCHED,
        /** The sound is no longer measured, and spoiled lines are no longer marked. */
        SOUND_NOT_WATCHED,
        /** Another part of the program has failed; {@code detail} is its name. */
        PART_LOST,
        /** Not wrong by itself: how long a recording the disk has room for, a sentence in {@code detail}. */
        ROOM,
        /** Nothing is wrong: the desk can be opened at the address in {@code detail}. */
        DESK_READY;

        /** Whether nothing is wrong: it is enough to have told it once. */
        public boolean isNotice() {
            return this == TEXT_WAITS || this == ROOM || this == DESK_READY;
        }
    }
}
