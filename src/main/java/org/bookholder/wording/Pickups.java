package org.bookholder.wording;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.follow.model.Attempt;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.session.Decision;
import org.bookholder.session.LineNotes;
import org.bookholder.session.Note;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;
import org.bookholder.wording.Pickup.Place;

/** Makes the pickup list of a session, for display or for files. */
public final class Pickups {
    /** Enough words to recognise a line. */
    private static final int FIRST_WORDS = 6;

    private Pickups() {}

    /** The lines to pick up, in script order. */
    public static List<Pickup> of(SessionState state) {
        return state.lines().pickups().stream().map(l -> of(state, l)).toList();
    }

    /** The lines that the editor should fix, in script order. */
    public static List<Pickup> fixes(SessionState state) {
        return state.lines().all().stream()
                .filter(line -> line.decidedTo(Decision.Choice.FIX_IN_EDIT))
                .map(line -> of(state, line))
                .toList();
    }

    /** Describes any line of a session in the same form. */
    public static Pickup of(SessionState state, LineNotes notes) {
        ScriptLine line = state.line(notes.line());
        Optional<Attempt> tried = notes.telling();
        Optional<Place> where =
                tried.isPresent() ? place(state, tried.get().take(), tried.get().start()) : gap(state, notes.line());
        return new Pickup(
                notes.line(),
                firstWords(line),
                notes.outcome(),
                DeviationText.instead(line, notes.outcome(), tried),
                notes.attempts().size(),
                where,
                notes.openMarks(),
                written(state, notes.line()),
                notes.decision().map(Decision::choice));
    }

    /** What was said instead of a line in one attempt; empty if it was clean. */
    public static String said(SessionState state, Attempt attempt) {
        return DeviationText.instead(state.line(attempt.line()), attempt.outcome(), Optional.of(attempt));
    }

    private static List<String> written(SessionState state, int line) {
        return state.remarks().notes().stream()
                .filter(note ->
                        note.line() == line && !note.pickup() && !note.text().isEmpty())
                .map(Note::text)
                .toList();
    }

    private static String firstWords(ScriptLine line) {
        String words = line.words().stream()
                .limit(FIRST_WORDS)
                .map(ScriptWord::written)
                .collect(Collectors.joining(" "));
        return line.words().size() > FIRST_WORDS ? words + " \u2026" : words;
    }

    /** Where a skipped line would have been: at the end of the last line read before it. */
    private static Optional<Place> gap(SessionState state, int line) {
        for (int before = line - 1; before >= 1; before--) {
            Optional<Attempt> last =
                    state.lines().notes(before).attempts().stream().max(Comparator.comparing(Attempt::end));
            if (last.isPresent()) {
                return place(state, last.get().take(), last.get().end());
            }
        }
        return Optional.empty();
    }

    private static Optional<Place> place(SessionState state, int take, StreamTime time) {
        return state.takes().all().stream()
                .filter(t -> t.number() == take)
                .findFirst()
                .map(t -> {
                    StreamTime inTake = time.since(t.start());
                    return new Place(take, inTake, t.when().plus(inTake.toDuration()));
                });
    }
}
