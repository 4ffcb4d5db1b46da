package org.bookholder.course.board;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.SameLines;
import org.bookholder.script.model.Script;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;

/**
 * What was recorded of a lesson, over all its sessions. Lines are identified by their text and speaker, so a line that
 * was rewritten after it was recorded must be recorded again, and sessions of one speaker each make up a lesson of several.
 *
 * @param lines how many lines the script has now
 * @param unread numbers of the lines that no session reached
 * @param pickups numbers of the lines to pick up
 * @param last when the last session ended; empty if there is none
 */
public record Recording(int lines, List<Integer> unread, List<Integer> pickups, Optional<Instant> last) {
    /** Copies the lists. */
    public Recording {
        unread = List.copyOf(unread);
        pickups = List.copyOf(pickups);
    }

    /** What the sessions of one lesson, in any order, recorded of its script. */
    public static Recording of(Script script, List<RecordedSession> sessions) {
        Map<Integer, Boolean> clean = new HashMap<>();
        List<RecordedSession> inOrder = new ArrayList<>(sessions);
        inOrder.sort(Comparator.comparing(RecordedSession::began));
        for (RecordedSession session : inOrder) {
            SessionState state = session.state();
            SameLines.numbers(state.script(), script)
                    .forEach((read, line) -> take(clean, line, state.lines().notes(read)));
        }
        List<Integer> unread = new ArrayList<>();
        List<Integer> pickups = new ArrayList<>();
        int lines = script.lines().size();
        for (int line = 1; line <= lines; line++) {
            Boolean found = clean.get(line);
            if (found == null) {
                unread.add(line);
            } else if (!found) {
                pickups.add(line);
            }
        }
        Optional<Instant> last = inOrder.stream().map(RecordedSession::ended).max(Comparator.naturalOrder());
        return new Recording(lines, unread, pickups, last);
    }

    /** A clean line stays clean unless someone later decided that it must be recorded again. */
    private static void take(Map<Integer, Boolean> clean, int line, LineNotes notes) {
        boolean wasClean = clean.getOrDefault(line, false);
        boolean said = notes.marked() || notes.decision().isPresent();
        if (notes.pickup()) {
            clean.put(line, wasClean && !said);
        } else if (!notes.attempts().isEmpty() || notes.decision().isPresent()) {
            clean.put(line, true);
        }
    }

    /** Whether any line was read. */
    public boolean begun() {
        return unread.size() < lines;
    }

    /** Whether every line was read clean. */
    public boolean complete() {
        return unread.isEmpty() && pickups.isEmpty();
    }
}
