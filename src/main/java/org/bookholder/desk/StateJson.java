package org.bookholder.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.bookholder.fatigue.FatigueReport;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.session.Acts;
import org.bookholder.session.OwnPace;
import org.bookholder.session.Remarks;
import org.bookholder.session.SessionState;
import org.bookholder.session.Take;
import org.bookholder.wording.ActText;
import org.bookholder.wording.BreakText;
import org.bookholder.wording.Cautions;
import org.bookholder.wording.Labels;
import org.bookholder.wording.RoundText;

/**
 * The state as JSON, in parts that the page replaces one by one. Times are seconds of the session's audio, or whole
 * minutes where they concern breaks; an unknown figure is null. Figures are rounded as they are displayed, because each
 * change is sent to every page.
 */
final class StateJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private StateJson() {}

    /** All parts except the script, the lines and the points of the pace. */
    static Map<String, JsonNode> parts(SessionState state, LiveHistory trail, HandOffStatus handedOff) {
        Map<String, JsonNode> parts = new LinkedHashMap<>();
        parts.put("at", at(state));
        parts.put("pace", pace(state));
        parts.put("sound", sound(state, trail));
        parts.put("tired", tired(state.measures().fatigue()));
        parts.put("takes", takes(state));
        parts.put("asides", asides(state));
        parts.put("notes", notes(state.remarks()));
        parts.put("people", people(state.remarks()));
        parts.put("handoff", handedOff(handedOff));
        parts.put("order", order(state));
        return parts;
    }

    /** What follows in the running order; empty if there is none. */
    private static ObjectNode order(SessionState state) {
        ObjectNode node = NODES.objectNode();
        state.upNext()
                .ifPresent(next -> node.put("title", next.title())
                        .put("seconds", next.length().toSeconds())
                        .put("more", next.more())
                        .put("ends", next.dayEnds()));
        return node;
    }

    static ObjectNode script(Script script) {
        ObjectNode node = NODES.objectNode();
        node.put("title", script.title());
        node.put("target", script.settings().targetPace());
        node.put("target_from", script.settings().paceSource().label());
        node.put("language", script.settings().language());
        node.put("words", script.spokenWords());
        ArrayNode elements = node.putArray("elements");
        script.elements().forEach(e -> elements.add(element(e)));
        return node;
    }

    private static ObjectNode element(ScriptElement element) {
        ObjectNode node = NODES.objectNode();
        node.put("paragraph", element.paragraph());
        if (element instanceof ScriptLine line) {
            node.put("line", line.number());
            ArrayNode words = node.putArray("words");
            line.words().stream().map(ScriptWord::written).forEach(words::add);
        } else if (element instanceof Direction direction) {
            node.put("direction", direction.text());
        }
        return node;
    }

    private static ObjectNode at(SessionState state) {
        ObjectNode node = NODES.objectNode();
        node.put("now", JsonFigures.seconds(state.now()));
        node.put("rolling", state.takes().rolling());
        node.put("held", state.takes().held());
        node.put("line", state.following().position().line());
        node.put("word", state.following().position().word());
        node.put("mover", state.following().mover().name());
        node.put("follow", state.following().certainty().name());
        node.put("finished", state.finished());
        node.put("before", state.wordsBefore());
        node.put("open", state.lines().pickups().size());
        state.takes().countIn().ifPresent(count -> node.put("count", count.seconds()));
        if (state.round().isOn()) {
            node.putObject("round").put("line", state.round().line()).put("said", RoundText.of(state));
        }
        return node;
    }

    private static ObjectNode pace(SessionState state) {
        ObjectNode node = NODES.objectNode();
        JsonFigures.put(node, "figure", state.measures().pace().figure(), 0);
        JsonFigures.put(node, "lesson", state.measures().pace().lesson(), 0);
        JsonFigures.put(node, "articulation", state.measures().pace().articulation(), 0);
        node.put("band", Labels.of(state.measures().pace().band()));
        OwnPace.offered(state).ifPresent(pace -> node.put("offer", pace));
        node.put("projected", Math.round(state.measures().pace().projected().seconds()));
        node.put("left", Math.round(state.measures().pace().left().seconds()));
        return node;
    }

    private static ObjectNode sound(SessionState state, LiveHistory trail) {
        ObjectNode node = NODES.objectNode();
        JsonFigures.put(node, "rms", state.measures().sound().rms(), 1);
        JsonFigures.put(node, "peak", state.measures().sound().peak(), 1);
        JsonFigures.put(node, "hold", trail.hold(), 1);
        JsonFigures.put(node, "room", trail.room(), 0);
        node.put("level", trail.level().name().toLowerCase(Locale.ROOT));
        node.put("clipped", state.measures().sound().clipped());
        node.put("lost", JsonFigures.seconds(state.measures().sound().lost()));
        node.put("wrong", trail.wrong());
        node.put("since", JsonFigures.seconds(trail.since()));
        return node;
    }

    private static ObjectNode tired(FatigueReport report) {
        ObjectNode node = NODES.objectNode();
        node.put("reading", minutes(report.reading()));
        node.put("on_camera", minutes(report.onCamera()));
        node.put("since_break", minutes(report.sinceBreak()));
        node.put("reading_since_break", minutes(report.readingSinceBreak()));
        JsonFigures.put(node, "fluffs", report.fluffs(), 1);
        JsonFigures.put(node, "fluffs_at_first", report.baselineFluffs(), 1);
        ArrayNode advice = node.putArray("advice");
        report.advice()
                .forEach(a -> advice.addObject()
                        .put("reason", a.reason().name())
                        .put("urgency", a.urgency().name())
                        .put("left", minutes(a.left()))
                        .put("text", BreakText.of(a)));
        return node;
    }

    /** Whole minutes that have passed. */
    private static long minutes(Duration duration) {
        return duration.toMinutes();
    }

    static ArrayNode cautions() {
        ArrayNode cautions = NODES.arrayNode();
        Cautions.lines().forEach(cautions::add);
        return cautions;
    }

    /** The takes. A rolling take has no end, so that its growing is not a change. */
    private static ArrayNode takes(SessionState state) {
        ArrayNode takes = NODES.arrayNode();
        for (Take take : state.takes().all()) {
            ObjectNode node = takes.addObject()
                    .put("take", take.number())
                    .put("start", JsonFigures.seconds(take.start()))
                    .put("when", take.when().toEpochMilli());
            if (!state.takes().rolling() || take.number() < state.takes().count()) {
                node.put("end", JsonFigures.seconds(take.end()));
            }
        }
        return takes;
    }

    private static ArrayNode asides(SessionState state) {
        ArrayNode asides = NODES.arrayNode();
        state.lines()
                .asides()
                .forEach(a -> asides.addObject()
                        .put("take", a.take())
                        .put("start", JsonFigures.seconds(a.start()))
                        .put("end", JsonFigures.seconds(a.end()))
                        .put("said", a.said())
                        .put("line", a.line()));
        return asides;
    }

    private static ArrayNode notes(Remarks remarks) {
        ArrayNode notes = NODES.arrayNode();
        remarks.notes()
                .forEach(n -> notes.addObject()
                        .put("note", n.number())
                        .put("at", JsonFigures.seconds(n.at()))
                        .put("line", n.line())
                        .put("text", n.text())
                        .put("by", Labels.of(n.by()))
                        .put("pickup", n.pickup()));
        return notes;
    }

    private static ObjectNode people(Remarks remarks) {
        ObjectNode node = NODES.objectNode();
        node.set("undo", undo(remarks.acts()));
        remarks.breakSince().ifPresent(when -> node.put("break_since", when.toEpochMilli()));
        remarks.message().ifPresent(m -> {
            ObjectNode message = node.putObject("message")
                    .put("number", m.number())
                    .put("at", JsonFigures.seconds(m.at()))
                    .put("text", m.text());
            m.shown().ifPresent(at -> message.put("shown", JsonFigures.seconds(at)));
        });
        return node;
    }

    /** For each author, the act that they would take back next. */
    private static ObjectNode undo(Acts acts) {
        ObjectNode node = NODES.objectNode();
        acts.standing()
                .forEach(act -> node.putObject(act.author())
                        .put("act", act.number())
                        .put("line", act.line())
                        .put("what", ActText.of(act)));
        return node;
    }

    private static ObjectNode handedOff(HandOffStatus handedOff) {
        ObjectNode node = NODES.objectNode();
        node.put("step", handedOff.step().name());
        node.put("folder", handedOff.folder());
        node.put("said", handedOff.said());
        ArrayNode files = node.putArray("files");
        handedOff.files().forEach(f -> files.addObject().put("name", f.name()).put("bytes", f.bytes()));
        return node;
    }

    /** Lines in a list, for the whole state. */
    static ArrayNode lines(SessionState state) {
        ArrayNode lines = NODES.arrayNode();
        state.lines().all().forEach(l -> lines.add(LineJson.of(state, l)));
        return lines;
    }

    /** Points of the pace from an index on: second, take, words per minute. */
    static ArrayNode points(List<LiveHistory.PacePoint> points, int from) {
        ArrayNode list = NODES.arrayNode();
        for (LiveHistory.PacePoint point : points.subList(from, points.size())) {
            ArrayNode node = list.addArray().add(point.second()).add(point.take());
            if (Double.isFinite(point.perMinute())) {
                node.add(Math.round(point.perMinute()));
            } else {
                node.addNull();
            }
        }
        return list;
    }
}
