package org.bookholder.cli;

import java.io.PrintStream;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.wording.Labels;
import org.bookholder.wording.Pickups;

/** Prints each line's outcome, with what was said instead, as soon as it is known and again when it changes. */
final class LineProgress {
    private static final int FIRST_WORDS = 60;

    private final PrintStream out;
    private final Map<Integer, String> printed = new HashMap<>();

    LineProgress(PrintStream out) {
        this.out = out;
    }

    /** Takes these outcomes for known: they are printed only when they change. */
    void known(SessionState before) {
        for (LineNotes notes : before.lines().all()) {
            if (!notes.attempts().isEmpty() || notes.reached()) {
                printed.put(notes.line(), whatIsPrinted(before, notes));
            }
        }
    }

    /** What must change for a line to be printed again: it counts as well that it was read in another take. */
    private static String whatIsPrinted(SessionState state, LineNotes notes) {
        int take = notes.attempts().stream().mapToInt(Attempt::take).max().orElse(0);
        return Labels.of(notes.outcome()) + Pickups.of(state, notes).said() + take;
    }

    /**
     * Prints what is new.
     *
     * @param settled whether no more outcomes will follow
     */
    void show(SessionState state, boolean settled) {
        int heard = settled ? Integer.MAX_VALUE : lastTried(state);
        for (LineNotes notes : state.lines().all()) {
            // A line that was not heard may still come, until a later line has been heard.
            boolean known = !notes.attempts().isEmpty() || (notes.reached() && notes.line() < heard);
            if (known) {
                print(state, notes);
            }
        }
        out.flush();
    }

    private void print(SessionState state, LineNotes notes) {
        String outcome = Labels.of(notes.outcome());
        String said = Pickups.of(state, notes).said();
        String now = whatIsPrinted(state, notes);
        if (!now.equals(printed.put(notes.line(), now))) {
            out.printf(Locale.ROOT, "%4d  %-10s  %s%n", notes.line(), outcome, words(state, notes.line()));
            if (notes.outcome() != Outcome.SKIPPED && !said.isEmpty()) {
                out.printf(Locale.ROOT, "%18s  %s%n", "", said);
            }
        }
    }

    private static int lastTried(SessionState state) {
        return state.lines().all().stream()
                .filter(notes -> !notes.attempts().isEmpty())
                .mapToInt(LineNotes::line)
                .max()
                .orElse(0);
    }

    private static String words(SessionState state, int line) {
        String text = state.script().lines().get(line - 1).text();
        return text.length() <= FIRST_WORDS ? text : text.substring(0, FIRST_WORDS - 3) + "...";
    }
}
