package org.bookholder.course.board;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.course.RecordedSession;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;

/**
 * What was recorded of a lesson, over all its sessions. Lines are identified by their text, so a line that was
 * rewritten after it was recorded must be recorded again.
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

    /** The nth line of a wording: two lines of one script may read the same. */
    private record Key(String text, int nth) {}

    /** What the sessions of one lesson, in any order, recorded of its script. */
    public static Recording of(Script script, List<RecordedSession> sessions) {
        Map<Key, Boolean> clean = new HashMap<>();
        List<RecordedSession> inOrder = new ArrayList<>(sessions);
        inOrder.sort(Comparator.comparing(RecordedSession::began));
        for (RecordedSession session : inOrder) {
            SessionState state = session.state();
            List<Key> keys = keys(state.script());
            for (int i = 0; i < keys.size(); i++) {
                take(clean, keys.get(i), state.lines().all().get(i));
            }
        }
        List<Integer> unread = new ArrayList<>();
        List<Integer> pickups = new ArrayList<>();
        List<Key> keys = keys(script);
        for (int i = 0; i < keys.size(); i++) {
            Boolean found = clean.get(keys.get(i));
            if (found == null) {
                unread.add(i + 1);
            } else if (!found) {
                pickups.add(i + 1);
            }
        }
        Optional<Instant> last = inOrder.stream().map(RecordedSession::ended).max(Comparator.naturalOrder());
        return new Recording(keys.size(), unread, pickups, last);
    }

    /** A clean line stays clean unless someone later decided that it must be recorded again. */
    private static void take(Map<Key, Boolean> clean, Key key, LineNotes notes) {
        boolean wasClean = clean.getOrDefault(key, false);
        boolean said = notes.marked() || notes.decision().isPresent();
        if (notes.pickup()) {
            clean.put(key, wasClean && !said);
        } else if (!notes.attempts().isEmpty() || notes.decision().isPresent()) {
            clean.put(key, true);
        }
    }

    private static List<Key> keys(Script script) {
        Map<String, Integer> seen = new HashMap<>();
        return script.lines().stream()
                .map(ScriptLine::text)
                .map(text -> new Key(text, seen.merge(text, 1, Integer::sum)))
                .toList();
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
