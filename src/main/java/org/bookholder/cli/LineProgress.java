package org.bookholder.cli;

import java.io.PrintStream;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;

/** Tells in the terminal what became of each line, as it settles. */
final class LineProgress {
    private static final int TEXT = 60;

    private final PrintStream out;
    private final Map<Integer, String> told = new HashMap<>();

    LineProgress(PrintStream out) {
        this.out = out;
    }

    /** Tells what is new. */
    void show(SessionState state) {
        for (LineNotes notes : state.lines()) {
            boolean past = notes.line() < state.position().line();
            if (notes.attempts().isEmpty() && !(past && notes.reached())) {
                continue;
            }
            String now = notes.outcome().label()
                    + (notes.attempts().size() > 1 ? ", " + notes.attempts().size() + " attempts" : "");
            if (!now.equals(told.put(notes.line(), now))) {
                String text = state.script().lines().get(notes.line() - 1).text();
                out.println(String.format(
                        Locale.ROOT,
                        "%4d  %-22s %s",
                        notes.line(),
                        now,
                        text.length() > TEXT ? text.substring(0, TEXT) + "..." : text));
            }
        }
    }
}
