package org.bookholder.course.versions;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** The history of a lesson as JSON, for other programs. Times are ISO 8601 in UTC. */
public final class HistoryJson {
    private HistoryJson() {}

    /** The history. */
    public static ObjectNode of(LessonHistory history) {
        ObjectNode json = JsonNodeFactory.instance.objectNode().put("title", history.title());
        ArrayNode entries = json.putArray("entries");
        for (LessonHistory.Entry entry : history.entries()) {
            ObjectNode node = entries.addObject()
                    .put("when", entry.when().toString())
                    .put("kind", entry.kind().label())
                    .put("version", entry.version())
                    .put("what", entry.what());
            ArrayNode changes = node.putArray("changes");
            entry.changes()
                    .forEach(change -> changes.addObject()
                            .put("kind", change.kind().name())
                            .put("line", change.line())
                            .put("was", change.was())
                            .put("is", change.is()));
        }
        return json;
    }
}
