package org.bookholder.handoff;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.bookholder.fatigue.BreakAdvice;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.Outcome;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.session.Take;
import org.bookholder.session.UnsavedStretch;
import org.bookholder.timing.StreamTime;
import org.bookholder.wording.BreakText;
import org.bookholder.wording.Cautions;
import org.bookholder.wording.Labels;
import org.bookholder.wording.PaceText;
import org.bookholder.wording.TroubleText;

/** How a reading went, in lines of text. */
final class Summary {
    private Summary() {}

    static List<String> of(SessionState state) {
        List<String> text = new ArrayList<>();
        text.add("Lines         " + counts(state));
        text.add("Pace          " + pace(state));
        text.add("Running time  " + minutes(state.measures().pace().projected())
                + " for the whole lesson, at this reading");
        text.add("Asides        "
                + (state.lines().asides().isEmpty()
                        ? "none"
                        : state.lines().asides().size()));
        for (Aside aside : state.lines().asides()) {
            text.add("    " + aside(state, aside));
        }
        state.notCalled().forEach((line, calls) -> text.add("Not called    line " + line + ": " + heardAs(calls)));
        for (UnsavedStretch lost : state.measures().sound().notSaved()) {
            text.add("Not saved     " + notSaved(state, lost));
        }
        if (!state.troubles().isEmpty()) {
            text.add("Trouble       " + TroubleText.of(state.troubles()));
        }
        addAdvice(text, state);
        return text;
    }

    /** Minutes, seconds and tenths. */
    static String tenths(StreamTime time) {
        long tenths = Math.round(10 * time.seconds());
        return String.format(Locale.ROOT, "%d:%02d.%d", tenths / 600, tenths / 10 % 60, tenths % 10);
    }

    private static String minutes(StreamTime time) {
        long seconds = Math.round(time.seconds());
        return String.format(Locale.ROOT, "%d:%02d", seconds / 60, seconds % 60);
    }

    private static String counts(SessionState state) {
        StringBuilder text = new StringBuilder();
        text.append(state.lines().count()).append(" in all");
        for (Outcome outcome : Outcome.values()) {
            long count = state.lines().all().stream()
                    .filter(LineNotes::reached)
                    .filter(notes -> notes.outcome() == outcome)
                    .count();
            if (count > 0) {
                text.append(", ").append(count).append(' ').append(Labels.of(outcome));
            }
        }
        long beyond =
                state.lines().all().stream().filter(notes -> !notes.reached()).count();
        return beyond == 0
                ? text.toString()
                : text.append(", ").append(beyond).append(" not reached").toString();
    }

    /** Somebody has decided that these words are heard so. */
    private static String heardAs(List<Deviation> calls) {
        return calls.stream()
                .map(call -> "\u201c" + call.written() + "\u201d, known to be heard as \u201c" + call.said() + "\u201d")
                .collect(Collectors.joining("; "));
    }

    private static String pace(SessionState state) {
        return PaceText.measured(state).orElse("too little was read to tell") + "; target " + PaceText.target(state);
    }

    private static String aside(SessionState state, Aside aside) {
        StreamTime inTake =
                aside.start().since(state.takes().all().get(aside.take() - 1).start());
        String where = aside.line() == 0 ? "before line 1" : "after line " + aside.line();
        return where + ", take " + aside.take() + " at " + tenths(inTake)
                + (aside.said().isEmpty() ? "" : ": \"" + aside.said() + "\"");
    }

    private static String notSaved(SessionState state, UnsavedStretch lost) {
        StreamTime start = state.takes().number(lost.take()).map(Take::start).orElse(StreamTime.ZERO);
        return "no sound of take " + lost.take() + " was saved from "
                + tenths(lost.start().since(start)) + " to " + tenths(lost.end().since(start));
    }

    private static void addAdvice(List<String> text, SessionState state) {
        List<BreakAdvice> due = state.measures().fatigue().advice().stream()
                .filter(advice -> advice.urgency() != BreakAdvice.Urgency.NONE)
                .toList();
        if (!due.isEmpty()) {
            text.add("");
            due.forEach(advice -> text.add(BreakText.of(advice)));
            text.addAll(Cautions.lines());
        }
    }
}
