package org.bookholder.handoff;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.UnjudgedStretch;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.session.Decision;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.Take;
import org.bookholder.session.UnsavedStretch;
import org.bookholder.timing.StreamTime;
import org.bookholder.wording.Labels;
import org.bookholder.wording.Pickup;
import org.bookholder.wording.Pickups;

/**
 * Exports all notes as one JSON object for other programs. Times are seconds of the session's audio to three decimals;
 * an unknown figure is null.
 */
public final class NotesJsonExporter implements Exporter {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    @Override
    public String name() {
        return "json";
    }

    @Override
    public String description() {
        return "all notes, as JSON, for other programs";
    }

    @Override
    public void write(SessionState state, List<SessionEvent> events, Appendable out) throws IOException {
        ObjectNode root = JSON.objectNode();
        root.put("script", state.script().source());
        root.put("title", state.script().title());
        root.set("takes", takes(state));
        root.set("lines", lines(state));
        root.set("asides", asides(state.lines().asides()));
        root.set("notJudged", notJudged(state.unjudged()));
        root.set("notSaved", notSaved(state.measures().sound().notSaved()));
        root.set("pace", pace(state));
        root.set("fatigue", FatigueJson.of(state.measures().fatigue()));
        root.set("sound", sound(state));
        out.append(new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(root))
                .append('\n');
    }

    private static ArrayNode takes(SessionState state) {
        ArrayNode takes = JSON.arrayNode();
        for (Take take : state.takes().all()) {
            ObjectNode node = takes.addObject();
            node.put("take", take.number());
            node.set("start", JsonNumbers.seconds(take.start()));
            node.set("end", JsonNumbers.seconds(take.end()));
            node.put("when", take.when().toString());
            node.put("audio", take.audio());
        }
        return takes;
    }

    private static ArrayNode lines(SessionState state) {
        ArrayNode lines = JSON.arrayNode();
        List<ScriptLine> script = state.script().lines();
        for (LineNotes notes : state.lines().all()) {
            lines.add(line(script.get(notes.line() - 1), notes, Pickups.of(state, notes)));
        }
        return lines;
    }

    private static ObjectNode line(ScriptLine line, LineNotes notes, Pickup told) {
        ObjectNode node = JSON.objectNode();
        node.put("line", notes.line());
        node.put("text", line.text());
        node.put("outcome", Labels.of(notes.outcome()));
        node.put("reached", notes.reached());
        node.put("pickup", notes.pickup());
        ArrayNode attempts = node.putArray("attempts");
        for (Attempt attempt : notes.attempts()) {
            attempts.add(bounds(attempt).put("complete", attempt.complete()));
        }
        Optional<Attempt> best = notes.best();
        node.set("best", best.isPresent() ? bounds(best.get()) : NullNode.getInstance());
        ArrayNode words = node.putArray("words");
        said(notes).forEach(deviation -> words.add(word(deviation)));
        ArrayNode marks = node.putArray("marks");
        notes.marks().forEach(marks::add);
        ArrayNode written = node.putArray("notes");
        told.notes().forEach(written::add);
        node.set("decision", decision(notes));
        return node;
    }

    /**
     * The decision on a line, and on which attempt: its number within its take, from 1. Both are 0 if the decision is
     * not about an attempt.
     */
    private static JsonNode decision(LineNotes notes) {
        if (notes.decision().isEmpty()) {
            return NullNode.getInstance();
        }
        Decision made = notes.decision().get();
        return JSON.objectNode()
                .put("choice", Labels.of(made.choice()))
                .put("take", made.take())
                .put("attempt", made.ordinal());
    }

    /** The deviations behind the outcome: those of the best attempt, otherwise of the last one. */
    private static List<Deviation> said(LineNotes notes) {
        return notes.telling().map(Attempt::deviations).orElse(List.of());
    }

    private static ObjectNode bounds(Attempt attempt) {
        return stretch(attempt.take(), attempt.start(), attempt.end());
    }

    private static ObjectNode stretch(int take, StreamTime start, StreamTime end) {
        ObjectNode node = JSON.objectNode();
        node.put("take", take);
        node.set("start", JsonNumbers.seconds(start));
        node.set("end", JsonNumbers.seconds(end));
        return node;
    }

    private static ObjectNode word(Deviation deviation) {
        ObjectNode node = JSON.objectNode();
        node.put("word", deviation.written());
        node.put("said", deviation.said());
        node.put("kind", Labels.of(deviation.kind()));
        node.put("place", deviation.word());
        node.set("certainty", JsonNumbers.number(deviation.certainty()));
        return node;
    }

    private static ArrayNode asides(List<Aside> asides) {
        ArrayNode all = JSON.arrayNode();
        for (Aside aside : asides) {
            ObjectNode node = all.addObject();
            node.set("start", JsonNumbers.seconds(aside.start()));
            node.set("end", JsonNumbers.seconds(aside.end()));
            node.put("said", aside.said());
            node.put("take", aside.take());
            node.put("line", aside.line());
        }
        return all;
    }

    private static ArrayNode notJudged(List<UnjudgedStretch> stretches) {
        ArrayNode all = JSON.arrayNode();
        for (UnjudgedStretch stretch : stretches) {
            ObjectNode node = stretch(stretch.take(), stretch.start(), stretch.end());
            ArrayNode lines = node.putArray("lines");
            stretch.lines().forEach(lines::add);
            all.add(node);
        }
        return all;
    }

    private static ArrayNode notSaved(List<UnsavedStretch> stretches) {
        ArrayNode all = JSON.arrayNode();
        for (UnsavedStretch stretch : stretches) {
            all.add(stretch(stretch.take(), stretch.start(), stretch.end()));
        }
        return all;
    }

    private static ObjectNode pace(SessionState state) {
        ObjectNode node = JSON.objectNode();
        node.put("target", state.script().settings().targetPace());
        node.set("lesson", JsonNumbers.number(state.measures().pace().lesson()));
        node.set("live", JsonNumbers.number(state.measures().pace().live()));
        node.set("articulation", JsonNumbers.number(state.measures().pace().articulation()));
        node.set("projected", JsonNumbers.seconds(state.measures().pace().projected()));
        node.set("left", JsonNumbers.seconds(state.measures().pace().left()));
        return node;
    }

    private static ObjectNode sound(SessionState state) {
        ObjectNode node = JSON.objectNode();
        node.set("rms", JsonNumbers.number(state.measures().sound().rms()));
        node.set("peak", JsonNumbers.number(state.measures().sound().peak()));
        node.put("clipped", state.measures().sound().clipped());
        node.set("lost", JsonNumbers.seconds(state.measures().sound().lost()));
        return node;
    }
}
