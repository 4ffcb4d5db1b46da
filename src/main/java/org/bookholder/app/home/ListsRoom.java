package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.bookholder.app.course.CourseLists;
import org.bookholder.app.course.CourseOverview;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.Lesson;
import org.bookholder.course.lists.CourseList;
import org.bookholder.course.lists.ListItem;
import org.bookholder.course.lists.ListJson;
import org.bookholder.course.lists.ListKind;
import org.bookholder.course.page.ListPage;
import org.bookholder.problem.ProblemException;

/** The lists of the course that the page shows. Safe for several threads. */
final class ListsRoom {
    private final Environment here;
    private final HomeCourses courses;

    ListsRoom(Environment here, HomeCourses courses) {
        this.here = here;
        this.courses = courses;
    }

    /**
     * Answers what the page asks: with the list as it stands then, or with a picture's address.
     *
     * @throws ProblemException why it can't be done; nothing is written then
     */
    synchronized ObjectNode answer(JsonNode asked) throws ProblemException {
        CourseOverview course = courses.overview("lists");
        ListKind kind = Arrays.stream(ListKind.values())
                .filter(known -> known.label().equals(asked.path("list").asText()))
                .findFirst()
                .orElseThrow(() -> new ProblemException("there is no such list", "lists", "load the page again"));
        CourseLists lists = new CourseLists(here, course);
        String item = asked.path("item").asText();
        switch (asked.path("do").asText()) {
            case "show" -> {}
            case "picture" -> {
                return picture(lists, lists.list(kind), item);
            }
            case "tick" -> lists.tick(kind, item, asked.path("on").asBoolean());
            case "leave" -> lists.leaveOut(kind, item, asked.path("on").asBoolean());
            case "leave_part" ->
                lists.leavePartOut(
                        kind, asked.path("part").asText(), asked.path("on").asBoolean());
            case "remark" -> lists.remark(kind, item, asked.path("text").asText());
            case "add" ->
                lists.add(kind, asked.path("group").asText(), asked.path("text").asText());
            default -> throw new ProblemException("there is no such action", "lists", "load the page again");
        }
        return shown(course, lists.list(kind));
    }

    private ObjectNode shown(CourseOverview course, CourseList list) {
        ObjectNode json = ListJson.of(list);
        ArrayNode kinds = json.putArray("lists");
        for (ListKind kind : ListKind.values()) {
            kinds.addObject().put("list", kind.label()).put("title", kind.title());
        }
        ArrayNode lessons = json.putArray("lessons");
        course.status().course().lessons().stream().map(Lesson::title).forEach(lessons::add);
        json.put("sheet", ListPage.fragment(course.status().course().title(), here.today(), list));
        return json;
    }

    private ObjectNode picture(CourseLists lists, CourseList list, String id) throws ProblemException {
        ObjectNode json = JsonNodeFactory.instance.objectNode().put("address", "");
        Optional<ListItem> item = list.row(id).map(CourseList.Row::item);
        Optional<Path> still = item.isEmpty() ? Optional.empty() : lists.picture(item.get());
        if (still.isPresent()) {
            Path session = item.orElseThrow().session().orElseThrow();
            courses.address(session)
                    .ifPresent(address ->
                            json.put("address", address + "film/" + still.get().getFileName()));
        }
        return json;
    }
}
