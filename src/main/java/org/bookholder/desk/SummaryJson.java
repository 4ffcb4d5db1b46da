package org.bookholder.desk;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.pace.PaceOfLine;
import org.bookholder.pace.PaceRules;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;

/**
 * The summary of a session, for its page. A fluff is an attempt that was broken off or misread. The session is divided into
 * stretches of about a hundred spoken words, so that one fluff in a stretch is about one percent.
 */
final class SummaryJson {
    private static final int STRETCH_WORDS = 100;

    private SummaryJson() {}

    /**
     * A stretch of the reading.
     *
     * @param from when its first attempt begins
     * @param to when its last one ends
     * @param firstLine the line of the first
     * @param lastLine the line of the last
     * @param words words as read
     * @param fluffs how many of its attempts were fluffs
     */
    record Stretch(StreamTime from, StreamTime to, int firstLine, int lastLine, long words, int fluffs) {
        double perHundred() {
            return words == 0 ? Double.NaN : 100.0 * fluffs / words;
        }
    }

    /**
     * The part of the summary that depends on the lines alone. Length and pace change every second and are sent in
     * other parts.
     */
    static ObjectNode of(SessionState state) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        LinesJson.put(node, state);
        node.put(
                "first_clean",
                state.lines().all().stream().filter(SummaryJson::cleanAtFirst).count());
        node.put("open", state.lines().pickups().size());
        node.put(
                "decided",
                state.lines().all().stream()
                        .filter(l -> l.decision().isPresent())
                        .count());
        List<Stretch> stretches = stretches(state);
        ArrayNode plot = node.putArray("stretches");
        stretches.forEach(s -> plot.add(json(s)));
        List<Stretch> whole =
                stretches.stream().filter(s -> s.words() >= STRETCH_WORDS / 2).toList();
        if (whole.size() > 1) {
            Comparator<Stretch> byFluffs = Comparator.comparingDouble(Stretch::perHundred);
            whole.stream().min(byFluffs).ifPresent(s -> node.set("best", json(s)));
            whole.stream().max(byFluffs).ifPresent(s -> node.set("hardest", json(s)));
        }
        return node;
    }

    private static boolean cleanAtFirst(LineNotes line) {
        return !line.attempts().isEmpty() && line.attempts().get(0).outcome() == Outcome.CLEAN;
    }

    static List<Stretch> stretches(SessionState state) {
        List<Attempt> attempts = state.lines().all().stream()
                .flatMap(l -> l.attempts().stream())
                .sorted(Comparator.comparing(Attempt::start))
                .toList();
        List<Stretch> stretches = new ArrayList<>();
        List<Attempt> run = new ArrayList<>();
        long words = 0;
        for (Attempt attempt : attempts) {
            run.add(attempt);
            words += words(state, attempt);
            if (words >= STRETCH_WORDS) {
                stretches.add(stretch(run, words));
                run.clear();
                words = 0;
            }
        }
        if (!run.isEmpty()) {
            stretches.add(stretch(run, words));
        }
        return stretches;
    }

    private static long words(SessionState state, Attempt attempt) {
        return PaceOfLine.of(
                        state.line(attempt.line()),
                        attempt,
                        PaceRules.defaults().pause())
                .spoken()
                .words();
    }

    private static Stretch stretch(List<Attempt> run, long words) {
        int fluffs =
                (int) run.stream().filter(a -> a.outcome() != Outcome.CLEAN).count();
        Attempt first = run.get(0);
        Attempt last = run.get(run.size() - 1);
        return new Stretch(first.start(), last.end(), first.line(), last.line(), words, fluffs);
    }

    private static ObjectNode json(Stretch s) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("from", JsonFigures.seconds(s.from()));
        node.put("to", JsonFigures.seconds(s.to()));
        node.put("first", s.firstLine());
        node.put("last", s.lastLine());
        node.put("words", s.words());
        node.put("fluffs", s.fluffs());
        JsonFigures.put(node, "rate", s.perHundred(), 1);
        return node;
    }
}
