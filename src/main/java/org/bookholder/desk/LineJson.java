package org.bookholder.desk;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.pace.PaceOfLine;
import org.bookholder.pace.PaceRules;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.wording.Labels;
import org.bookholder.wording.Pickup;
import org.bookholder.wording.Pickups;

/** A line and its attempts as JSON, for the page. Times are seconds of the session's audio. */
final class LineJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private LineJson() {}

    static ObjectNode of(SessionState state, LineNotes notes) {
        Pickup pickup = Pickups.of(state, notes);
        ObjectNode node = NODES.objectNode();
        node.put("line", notes.line());
        node.put("outcome", Labels.of(notes.outcome()));
        node.put("reached", notes.reached());
        node.put("pickup", notes.pickup());
        node.put("marked", notes.marked());
        node.put("said", pickup.said());
        pickup.where()
                .ifPresent(where -> node.putObject("where")
                        .put("take", where.take())
                        .put(
                                "at",
                                JsonFigures.seconds(state.takes()
                                        .all()
                                        .get(where.take() - 1)
                                        .start()
                                        .plus(where.inTake()))));
        ArrayNode attempts = node.putArray("attempts");
        notes.attempts().forEach(a -> attempts.add(attempt(state, a)));
        notes.best().ifPresent(b -> node.putArray("best").add(b.take()).add(b.ordinal()));
        notes.decision()
                .ifPresent(d -> node.putObject("decision")
                        .put("choice", d.choice().name())
                        .put("label", Labels.of(d.choice()))
                        .put("take", d.take())
                        .put("ordinal", d.ordinal()));
        return node;
    }

    private static ObjectNode attempt(SessionState state, Attempt attempt) {
        PaceOfLine pace = PaceOfLine.of(
                state.line(attempt.line()), attempt, PaceRules.defaults().pause());
        ObjectNode node = NODES.objectNode();
        node.put("take", attempt.take());
        node.put("ordinal", attempt.ordinal());
        node.put("start", JsonFigures.seconds(attempt.start()));
        node.put("end", JsonFigures.seconds(attempt.end()));
        node.put("outcome", Labels.of(attempt.outcome()));
        JsonFigures.put(node, "pace", pace.wordsPerMinute(), 0);
        ArrayNode words = node.putArray("words");
        for (Deviation deviation : attempt.deviations()) {
            words.addObject()
                    .put("word", deviation.word())
                    .put("written", deviation.written())
                    .put("said", deviation.said())
                    .put("kind", Labels.of(deviation.kind()))
                    .put("certainty", Math.round(100 * deviation.certainty()) / 100.0);
        }
        return node;
    }
}
