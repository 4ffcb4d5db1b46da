package org.bookholder.desk;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import org.bookholder.follow.model.Outcome;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;

/** The lines of a session that belong on its pickup list, for the page. */
public final class PickupListJson {
    private PickupListJson() {}

    /** Lines that were reported, marked, noted or decided on, in script order, each with its text. */
    public static ArrayNode of(SessionState state) {
        ArrayNode lines = JsonNodeFactory.instance.arrayNode();
        for (LineNotes line : state.lines().all()) {
            if (isListed(state, line)) {
                lines.add(LineJson.of(state, line)
                        .put("text", state.line(line.line()).text()));
            }
        }
        return lines;
    }

    private static boolean isListed(SessionState state, LineNotes line) {
        return line.pickup()
                || line.decision().isPresent()
                || line.attempts().stream().anyMatch(a -> a.outcome() != Outcome.CLEAN)
                || state.remarks().notes().stream().anyMatch(n -> n.line() == line.line());
    }
}
