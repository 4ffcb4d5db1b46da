package org.bookholder.cutlist;

import java.util.Optional;
import org.bookholder.session.Decision;
import org.bookholder.session.LineNotes;
import org.bookholder.session.Pickup;
import org.bookholder.session.Pickups;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;

/** What an editor reads of a line: that it is to be recorded again, to be mended, or what people wrote on it. */
final class LineMarker {
    private LineMarker() {}

    /**
     * The marker of a line that is used; empty if there is nothing to tell.
     *
     * @param offset of the line from the beginning of its clip
     */
    static Optional<CutMarker> of(SessionState state, LineNotes line, StreamTime offset) {
        Pickup told = Pickups.of(state, line);
        if (line.pickup()) {
            return Optional.of(new CutMarker(CutMarker.Kind.PICKUP, offset, pickup(line, told)));
        }
        if (line.decidedTo(Decision.Choice.FIX_IN_EDIT)) {
            return Optional.of(new CutMarker(CutMarker.Kind.FIX, offset, decided(line, told)));
        }
        return told.written().isEmpty()
                ? Optional.empty()
                : Optional.of(new CutMarker(CutMarker.Kind.NOTE, offset, note(line, told)));
    }

    /** The marker of a line for which nothing can be used; whoever decided that it will do knows where it is. */
    static CutMarker ofGap(SessionState state, LineNotes line) {
        Pickup told = Pickups.of(state, line);
        return line.kept()
                ? new CutMarker(CutMarker.Kind.FIX, StreamTime.ZERO, decided(line, told))
                : new CutMarker(CutMarker.Kind.PICKUP, StreamTime.ZERO, pickup(line, told));
    }

    private static String pickup(LineNotes line, Pickup told) {
        String head = "pickup, line " + line.line() + ", ";
        if (!line.reached()) {
            return text(head + "not read yet", told);
        }
        // A clean line that nobody marked is to be recorded again because someone wants it better.
        boolean better =
                told.said().isEmpty() && !line.marked() && told.decision().isPresent();
        return text(head + (better ? told.decision().get().label() : outcome(told)), told);
    }

    private static String decided(LineNotes line, Pickup told) {
        String head = line.decision().orElseThrow().choice().label() + ", line " + line.line();
        return text(told.said().isEmpty() ? head : head + ", " + outcome(told), told);
    }

    private static String note(LineNotes line, Pickup told) {
        return "note, line " + line.line() + ": " + String.join("; ", told.written()) + " (" + told.firstWords() + ")";
    }

    private static String outcome(Pickup told) {
        return told.outcome().label() + (told.said().isEmpty() ? "" : ": " + told.said());
    }

    private static String text(String head, Pickup told) {
        StringBuilder text = new StringBuilder(head);
        told.written().forEach(written -> text.append("; ").append(written));
        return text.append(" (").append(told.firstWords()).append(')').toString();
    }
}
