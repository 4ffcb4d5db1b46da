package org.bookholder.course.agenda;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** The work of a day as JSON, for pages and other programs. */
public final class AgendaJson {
    private AgendaJson() {}

    /** Puts it into {@code node}. */
    public static void put(ObjectNode node, Agenda agenda) {
        node.put("day", agenda.day().toString())
                .put("headline", agenda.headline())
                .put("launch", agenda.launch());
        ArrayNode items = node.putArray("items");
        for (AgendaItem item : agenda.items()) {
            ArrayNode why = items.addObject()
                    .put("kind", item.kind().name())
                    .put("lesson", item.lesson())
                    .put("text", item.text())
                    .putArray("why");
            item.why().forEach(why::add);
        }
        ArrayNode why = node.putArray("why");
        agenda.why().forEach(why::add);
    }
}
