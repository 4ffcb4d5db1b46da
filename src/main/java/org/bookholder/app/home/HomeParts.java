package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.bookholder.app.course.CourseJson;
import org.bookholder.desk.LinesJson;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;

/** What the page shows, as JSON, in parts that are replaced one by one. */
final class HomeParts {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private HomeParts() {}

    /** All but the reading. */
    static Map<String, JsonNode> of(
            HomeCourses courses,
            HomeCourses.Seen seen,
            BeforeReading.Known before,
            JsonNode settings,
            HomeDay day,
            TodayJson.Setting today) {
        Map<String, JsonNode> parts = new LinkedHashMap<>();
        parts.put("courses", courses(courses.known().all()));
        parts.put("looking", looking(courses));
        parts.put("course", course(seen, today));
        parts.put("day", day.json());
        parts.put("shelf", ShelfJson.of(seen, courses.sessions(seen)));
        parts.put("before", before(before));
        parts.put("settings", settings);
        parts.put("services", services());
        return parts;
    }

    private static JsonNode courses(List<KnownCourses.Entry> known) {
        ArrayNode courses = NODES.arrayNode();
        for (KnownCourses.Entry entry : known) {
            courses.addObject()
                    .put("name", entry.name())
                    .put("title", entry.title())
                    .put("note", entry.note())
                    .put("folder", entry.folder());
        }
        return courses;
    }

    private static JsonNode looking(HomeCourses courses) {
        ObjectNode looking = NODES.objectNode();
        courses.looking().ifPresent(now -> looking.put("known", now.known()).put("all", now.all()));
        return looking;
    }

    private static JsonNode course(HomeCourses.Seen seen, TodayJson.Setting today) {
        ObjectNode course = NODES.objectNode();
        course.put("name", seen.name());
        course.put("folder", seen.folder());
        course.put("trouble", seen.trouble());
        seen.overview().ifPresent(overview -> course.set("today", TodayJson.of(overview, today)));
        return course;
    }

    static JsonNode reading(HomeReading.Standing now) {
        ObjectNode reading = NODES.objectNode();
        reading.put("step", now.step().name());
        now.order()
                .ifPresent(order -> reading.put("course", order.course())
                        .put("lesson", order.lesson())
                        .put("title", order.title())
                        .put("round", order.pickups()));
        now.session().ifPresent(session -> reading.put("session", CourseJson.name(session)));
        now.place().ifPresent(place -> progress(reading, place.session().state()));
        now.result().ifPresent(result -> {
            progress(reading, result.state());
            reading.put("faulty", result.fault().isPresent());
        });
        ArrayNode said = reading.putArray("said");
        now.said().forEach(said::add);
        return reading;
    }

    private static void progress(ObjectNode reading, SessionState state) {
        List<LineNotes> lines = state.lines().all();
        reading.put("line", Math.min(state.following().position().line(), lines.size()));
        reading.put("takes", state.takes().all().size());
        reading.put("rolling", state.takes().rolling());
        reading.put("held", state.takes().held());
        LinesJson.put(reading, state);
        state.upNext()
                .ifPresent(next -> reading.putObject("next")
                        .put("title", next.title())
                        .put("seconds", next.length().toSeconds())
                        .put("more", next.more())
                        .put("ends", next.dayEnds()));
        reading.put("done", !state.takes().all().isEmpty() && (!state.takes().rolling() || state.finished()));
        reading.put("pickups", lines.stream().filter(LineNotes::pickup).count());
    }

    private static JsonNode before(BeforeReading.Known known) {
        ObjectNode before = NODES.objectNode();
        ArrayNode names = before.putArray("microphones");
        known.microphones().forEach(names::add);
        before.put("microphone", known.chosen());
        before.put("room", known.room());
        before.put("scarce", known.scarce());
        before.put("trouble", known.trouble());
        return before;
    }

    private static JsonNode services() {
        ArrayNode services = NODES.arrayNode();
        for (HomeService service : HomeService.values()) {
            services.addObject()
                    .put("name", service.title())
                    .put("good", service.goodFor())
                    .put("where", service.where());
        }
        return services;
    }
}
