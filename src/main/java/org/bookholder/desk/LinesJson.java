package org.bookholder.desk;

import com.fasterxml.jackson.databind.node.ObjectNode;
import org.bookholder.session.LineCounts;
import org.bookholder.session.SessionState;

/** How many lines were read, skipped and not reached, as every page gets it. */
public final class LinesJson {
    private LinesJson() {}

    /** Adds the numbers to a node. */
    public static ObjectNode put(ObjectNode node, SessionState state) {
        LineCounts counts = LineCounts.of(state.lines().all());
        return node.put("lines", counts.all())
                .put("read", counts.read())
                .put("skipped", counts.skipped())
                .put("not_reached", counts.notReached());
    }
}
