package org.bookholder.wording;

import org.bookholder.cutlist.CutMarker;
import org.bookholder.follow.model.Aside;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;

/** The texts of an editor's markers: a line to record again, a line to fix, a person's note, an aside, or a direction. */
public final class MarkerText {
    private MarkerText() {}

    /** The text of a marker of a session's cut. */
    public static String of(SessionState state, CutMarker marker) {
        LineNotes line = state.lines().notes(marker.line());
        return switch (marker.kind()) {
            case PICKUP -> pickup(line, Pickups.of(state, line));
            case FIX -> decided(line, Pickups.of(state, line));
            case NOTE -> note(line, Pickups.of(state, line));
            case ASIDE -> aside(marker.aside().orElseThrow());
            case DIRECTION -> "direction: " + marker.direction().orElseThrow();
        };
    }

    private static String aside(Aside aside) {
        String said = aside.said().isEmpty() ? "not understood" : "\u201c" + aside.said() + "\u201d";
        return "aside, take " + aside.take() + ", not used: " + said;
    }

    private static String pickup(LineNotes line, Pickup told) {
        String head = "pickup, line " + line.line() + ", ";
        if (!line.reached()) {
            return text(head + "not read yet", told);
        }
        // A clean line without a mark is on the list because someone decided to record a better one.
        boolean better =
                told.said().isEmpty() && !line.marked() && told.decision().isPresent();
        return text(head + (better ? Labels.of(told.decision().get()) : outcome(told)), told);
    }

    private static String decided(LineNotes line, Pickup told) {
        String head = Labels.of(line.decision().orElseThrow().choice()) + ", line " + line.line();
        return text(told.said().isEmpty() ? head : head + ", " + outcome(told), told);
    }

    private static String note(LineNotes line, Pickup told) {
        return "note, line " + line.line() + ": " + String.join("; ", told.written()) + " (" + told.firstWords() + ")";
    }

    private static String outcome(Pickup told) {
        return Labels.of(told.outcome()) + (told.said().isEmpty() ? "" : ": " + told.said());
    }

    private static String text(String head, Pickup told) {
        StringBuilder text = new StringBuilder(head);
        told.written().forEach(written -> text.append("; ").append(written));
        return text.append(" (").append(told.firstWords()).append(')').toString();
    }
}
