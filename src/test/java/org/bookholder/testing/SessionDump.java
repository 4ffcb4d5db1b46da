package org.bookholder.testing;

import java.util.Locale;
import java.util.stream.Collectors;
import org.bookholder.fatigue.BreakAdvice;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.pace.PaceReading;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.wording.Labels;
import org.bookholder.wording.TroubleText;

/** Renders a session's state as text for golden files: the same state always gives the same text. */
public final class SessionDump {
    private SessionDump() {}

    public static String of(SessionState state) {
        StringBuilder out = new StringBuilder();
        add(out, "script %s, %d words", state.script().title(), state.wordsTotal());
        add(
                out,
                "now %s rolling=%b held=%b follow=%s position=%d.%d by %s",
                seconds(state.now().seconds()),
                state.takes().rolling(),
                state.takes().held(),
                state.following().certainty(),
                state.following().position().line(),
                state.following().position().word(),
                state.following().mover());
        if (!state.troubles().isEmpty()) {
            add(out, "trouble %s", TroubleText.of(state.troubles()));
        }
        state.takes()
                .all()
                .forEach(t -> add(
                        out,
                        "take %d %s-%s %s '%s'",
                        t.number(),
                        seconds(t.start().seconds()),
                        seconds(t.end().seconds()),
                        t.when(),
                        t.audio()));
        state.lines().all().forEach(l -> line(out, state, l));
        state.lines().asides().forEach(a -> aside(out, a));
        pace(out, state.measures().pace());
        add(
                out,
                "fatigue reading=%ds onCamera=%ds %s",
                state.measures().fatigue().reading().toSeconds(),
                state.measures().fatigue().onCamera().toSeconds(),
                state.measures().fatigue().warnings().stream()
                        .map(SessionDump::advice)
                        .collect(Collectors.joining(" ")));
        return out.toString();
    }

    private static void line(StringBuilder out, SessionState state, LineNotes line) {
        add(
                out,
                "line %d %s%s%s: %s",
                line.line(),
                Labels.of(line.outcome()),
                line.reached() ? "" : " (not reached)",
                line.pickup() ? " PICKUP" : "",
                state.line(line.line()).text());
        line.attempts()
                .forEach(a -> attempt(out, a, line.best().filter(a::equals).isPresent()));
        line.marks().forEach(m -> add(out, "  mark %s", m));
    }

    private static void attempt(StringBuilder out, Attempt attempt, boolean best) {
        add(
                out,
                "  attempt %d/%d %s-%s %s%s%s",
                attempt.take(),
                attempt.ordinal(),
                seconds(attempt.start().seconds()),
                seconds(attempt.end().seconds()),
                Labels.of(attempt.outcome()),
                best ? " best" : "",
                attempt.deviations().stream().map(SessionDump::deviation).collect(Collectors.joining()));
    }

    private static String deviation(Deviation deviation) {
        return String.format(
                Locale.ROOT,
                " [%d %s '%s' > '%s']",
                deviation.word(),
                Labels.of(deviation.kind()),
                deviation.written(),
                deviation.said());
    }

    private static void aside(StringBuilder out, Aside aside) {
        add(
                out,
                "aside take %d %s-%s after line %d: %s",
                aside.take(),
                seconds(aside.start().seconds()),
                seconds(aside.end().seconds()),
                aside.line(),
                aside.said());
    }

    private static void pace(StringBuilder out, PaceReading pace) {
        add(
                out,
                "pace live=%.1f lesson=%.1f articulation=%.1f projected=%s left=%s %s",
                pace.live(),
                pace.lesson(),
                pace.articulation(),
                seconds(pace.projected().seconds()),
                seconds(pace.left().seconds()),
                Labels.of(pace.band()));
    }

    private static String advice(BreakAdvice advice) {
        return advice.reason() + "=" + advice.urgency();
    }

    private static String seconds(double seconds) {
        return String.format(Locale.ROOT, "%.2f", seconds);
    }

    private static void add(StringBuilder out, String format, Object... values) {
        out.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
