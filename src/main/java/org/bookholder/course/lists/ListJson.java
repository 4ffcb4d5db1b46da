package org.bookholder.course.lists;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** A list as JSON, for the page and for other programs. */
public final class ListJson {
    private ListJson() {}

    /** The list. Items that are left out are in it, too. */
    public static ObjectNode of(CourseList list) {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        json.put("list", list.kind().label());
        json.put("title", list.kind().title());
        json.put("about", list.kind().about());
        json.put("standing", list.standing());
        json.put("open", list.open().size());
        ArrayNode parts = json.putArray("parts");
        list.parts().forEach(part -> parts.addObject().put("name", part.name()).put("wanted", part.wanted()));
        ArrayNode rows = json.putArray("rows");
        for (CourseList.Row row : list.rows()) {
            ListItem item = row.item();
            rows.addObject()
                    .put("id", item.id())
                    .put("lesson", item.number())
                    .put("heading", item.heading())
                    .put("part", item.part())
                    .put("text", item.text())
                    .put("detail", item.detail())
                    .put("found", item.found().name())
                    .put("pictured", item.session().isPresent())
                    .put("own", row.own())
                    .put("done", row.done())
                    .put("out", row.out())
                    .put("remark", row.remark());
        }
        return json;
    }
}
