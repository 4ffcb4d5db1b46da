package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.bookholder.app.course.CourseJson;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;
import org.bookholder.desk.LinesJson;
import org.bookholder.session.SessionState;

/** The lessons and sessions of the course that the page shows, to choose from: the newest session first. */
final class ShelfJson {
    private ShelfJson() {}

    /**
     * The shelf.
     *
     * @param folders all sessions that lie where this course's may lie, of whatever course, and also damaged ones
     */
    static JsonNode of(HomeCourses.Seen seen, List<Path> folders) {
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
        Set<String> known = new HashSet<>(sessions.findValuesAsText("folder"));
        ArrayNode others = shelf.putArray("others");
        folders.stream()
                .filter(folder -> !known.contains(folder.toString()))
                .forEach(folder -> others.addObject()
                        .put("folder", folder.toString())
                        .put("name", String.valueOf(folder.getFileName())));
        return shelf;
    }

    private static void session(ObjectNode node, Recorded recorded) {
        SessionState state = recorded.session().state();
        LinesJson.put(node, state)
                .put("lesson", recorded.lesson().title())
                .put("number", recorded.lesson().number())
                .put("folder", recorded.session().folder().toString())
                .put("name", CourseJson.name(recorded.session().folder()))
                .put("began", recorded.session().began().toEpochMilli())
                .put("usable", usable(state))
                .put("pickups", state.lines().pickups().size());
    }

    /** How many lines have an attempt that an edit can use. */
    private static long usable(SessionState state) {
        return state.lines().all().stream()
                .filter(line -> line.reached() && !line.pickup())
                .count();
    }

    private record Recorded(Lesson lesson, RecordedSession session) {}
}
