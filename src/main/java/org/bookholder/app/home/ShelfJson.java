package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Comparator;
import org.bookholder.app.course.CourseJson;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;

/** The lessons and sessions of the course that the page shows, to choose from: the newest session first. */
final class ShelfJson {
    private ShelfJson() {}

    static JsonNode of(HomeCourses.Seen seen) {
        ObjectNode shelf = JsonNodeFactory.instance.objectNode();
        ArrayNode lessons = shelf.putArray("lessons");
        ArrayNode sessions = shelf.putArray("sessions");
        seen.overview().ifPresent(course -> {
            for (Lesson lesson : course.status().course().lessons()) {
                lessons.addObject()
                        .put("number", lesson.number())
                        .put("title", lesson.title())
                        .put("file", lesson.file().toString());
            }
            course.sessions().entrySet().stream()
                    .flatMap(
                            lesson -> lesson.getValue().stream().map(session -> new Recorded(lesson.getKey(), session)))
                    .sorted(Comparator.comparing(
                                    (Recorded recorded) -> recorded.session().began())
                            .reversed())
                    .forEach(recorded -> session(sessions.addObject(), recorded));
        });
        return shelf;
    }

    private static void session(ObjectNode node, Recorded recorded) {
        node.put("lesson", recorded.lesson().title())
                .put("number", recorded.lesson().number())
                .put("folder", recorded.session().folder().toString())
                .put("name", CourseJson.name(recorded.session().folder()))
                .put("began", recorded.session().began().toEpochMilli())
                .put("pickups", recorded.session().state().lines().pickups().size());
    }

    private record Recorded(Lesson lesson, RecordedSession session) {}
}
