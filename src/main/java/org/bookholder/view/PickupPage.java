package org.bookholder.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.follow.Deviation;
import org.bookholder.follow.Outcome;
import org.bookholder.script.ScriptLine;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;

/** The lines to pick up, as a page to be read from where the presenter sits. */
final class PickupPage {
    private static final int FIRST_WORDS = 7;
    private static final int MOST_DEVIATIONS = 2;

    private PickupPage() {}

    static Page of(SessionState state) {
        List<ScriptLine> lines = state.script().lines();
        List<Page.Entry> entries = state.pickups().stream()
                .map(notes -> entry(lines.get(notes.line() - 1), notes))
                .toList();
        return new Page(heading(entries.size()), under(state), entries, false);
    }

    private static String heading(int count) {
        return switch (count) {
            case 0 -> "Nothing to pick up";
            case 1 -> "One line to pick up";
            default -> count + " lines to pick up";
        };
    }

    private static String under(SessionState state) {
        long read =
                state.lines().stream().filter(notes -> notes.best().isPresent()).count();
        String lines = read + " of " + state.lines().size() + " lines read";
        double pace = state.pace().lesson();
        return Double.isNaN(pace) ? lines : lines + String.format(Locale.ROOT, "  ·  %.0f words a minute", pace);
    }

    private static Page.Entry entry(ScriptLine line, LineNotes notes) {
        boolean marked = notes.outcome() == Outcome.CLEAN;
        return new Page.Entry(
                Integer.toString(line.number()),
                firstWords(line),
                marked ? "marked" : notes.outcome().label(),
                note(notes));
    }

    private static String firstWords(ScriptLine line) {
        StringBuilder text = new StringBuilder();
        line.words().stream()
                .limit(FIRST_WORDS)
                .forEach(w -> text.append(text.isEmpty() ? "" : " ").append(w.written()));
        return line.words().size() > FIRST_WORDS ? text + " …" : text.toString();
    }

    private static String note(LineNotes notes) {
        List<String> parts = new ArrayList<>();
        if (notes.outcome() == Outcome.MISREAD) {
            List<Deviation> deviations =
                    notes.best().map(best -> best.deviations()).orElse(List.of());
            deviations.stream().limit(MOST_DEVIATIONS).map(PickupPage::said).forEach(parts::add);
            if (deviations.size() > MOST_DEVIATIONS) {
                parts.add("and " + (deviations.size() - MOST_DEVIATIONS) + " more");
            }
        }
        if (notes.attempts().size() > 1) {
            parts.add("tried " + notes.attempts().size() + " times");
        }
        notes.marks().stream().filter(mark -> !mark.isBlank()).forEach(parts::add);
        return String.join("  ·  ", parts);
    }

    private static String said(Deviation deviation) {
        return switch (deviation.kind()) {
            case SWAPPED ->
                deviation.said().isEmpty()
                        ? "something else for “" + deviation.written() + "”"
                        : "said “" + deviation.said() + "” for “" + deviation.written() + "”";
            case DROPPED -> "left out “" + deviation.written() + "”";
            case ADDED -> "added “" + deviation.said() + "”";
        };
    }
}
