package org.bookholder.wording;

import java.util.stream.Collectors;
import org.bookholder.session.Trouble;
import org.bookholder.session.Troubles;

/** Tells people what is wrong. */
public final class TroubleText {
    private TroubleText() {}

    /** All that is wrong, one sentence each; empty if nothing is. */
    public static String of(Troubles troubles) {
        return troubles.all().stream().map(TroubleText::of).collect(Collectors.joining(" "));
    }

    private static String of(Trouble trouble) {
        String detail = trouble.detail();
        return switch (trouble.kind()) {
            case NOT_SAVED -> "Notes are not being saved (" + detail + ").";
            case TEXT_WAITS -> "The new text is used from the next hold on.";
            case TEXT_UNUSABLE -> "The new text is not used: " + detail;
            case TEXT_NOT_KEPT -> "The session's folder still holds the old text: " + detail;
            case NO_SOUND -> "No sound comes in (" + detail + "); move the text by hand.";
            case NOT_RECORDED -> "This take is no longer being recorded (" + detail + ").";
            case DESK_READY -> detail;
        };
    }
}
