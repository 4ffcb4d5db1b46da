package org.bookholder.wording;

import java.util.stream.Collectors;
import org.bookholder.session.Trouble;
import org.bookholder.session.Troubles;

/** Describes troubles to people. */
public final class TroubleText {
    private TroubleText() {}

    /** One sentence for each trouble; empty if there is none. */
    public static String of(Troubles troubles) {
        return troubles.all().stream().map(TroubleText::of).collect(Collectors.joining(" "));
    }

    private static String of(Trouble trouble) {
        String detail = trouble.detail();
        return switch (trouble.kind()) {
            case NOT_SAVED -> "Notes are not being saved (" + detail + ").";
            case ONE_NOT_SAVED -> "One note cannot be saved and is lost when the session ends; the others are saved.";
            case TEXT_WAITS -> "The new text is used from the next hold on.";
            case TEXT_UNUSABLE -> "The new text is not used: " + detail;
            case TEXT_NOT_KEPT -> "The session's folder still holds the old text: " + detail;
            case NO_SOUND -> "No sound comes in (" + detail + "); move the text by hand.";
            case OTHER_MICROPHONE -> "Another microphone is heard now: " + detail + ".";
            case NOT_RECORDED -> "The sound is not being saved (" + detail + "); it is kept and tried again.";
            case BEHIND -> "The text follows your voice late: this machine is busy. Close other programs.";
            case HEARD_BADLY ->
                "Only " + detail
                        + " of 100 words are understood. Lost lines are still found; listen yourself to check single words.";
            case EAR_RESTARTS -> "Your voice is not heard for a moment: speech recognition failed and starts again.";
            case EAR_LOST -> "Speech recognition has failed; move the text by hand. The recording goes on.";
            case CHECK_RESTARTS -> "Checking your words failed and starts again.";
            case CHECK_LOST -> "Checking your words has failed for this take; listen to its lines yourself.";
            case DESK_RESTARTS -> "The desk failed and starts again.";
            case DESK_LOST -> "The desk has failed; the reading goes on without it.";
            case WINDOW_RESTARTS -> "The window failed and is opened again.";
            case WINDOW_LOST -> "The window has failed; the reading goes on without it.";
            case SCRIPT_NOT_WATCHED -> "Changes to the script are not picked up any more.";
            case SOUND_NOT_WATCHED -> "The sound is not checked any more; it is still recorded.";
            case PART_LOST -> "A part of the program has failed (" + detail + "); the reading goes on.";
            case ROOM, DESK_READY -> detail;
        };
    }
}
