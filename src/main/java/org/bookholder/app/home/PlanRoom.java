package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import org.bookholder.app.course.CoursePlan;
import org.bookholder.app.course.PlanJson;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.CourseFile;
import org.bookholder.problem.ProblemException;

/** The plan of the course that the page shows: its days and what else is written about the course. Safe for several threads. */
final class PlanRoom {
    private final Environment here;
    private final HomeCourses courses;

    PlanRoom(Environment here, HomeCourses courses) {
        this.here = here;
        this.courses = courses;
    }

    /**
     * Answers what the page asks.
     *
     * @throws ProblemException why it can't be done; nothing is written then
     */
    synchronized ObjectNode answer(JsonNode asked) throws ProblemException {
        String folder = courses.seen().folder();
        if (folder.isEmpty()) {
            throw new ProblemException("no course is open", "plan", "open one first");
        }
        CourseFile file = new CourseFile(Path.of(folder));
        switch (asked.path("do").asText()) {
            case "show" -> {}
            case "set" ->
                file.set(asked.path("path").asText(), asked.path("value").asText());
            case "day" ->
                file.plan(day(asked.path("day").asText()), asked.path("on").asBoolean());
            default -> throw new ProblemException("there is no such action", "plan", "load the page again");
        }
        courses.look();
        return shown(file);
    }

    private static LocalDate day(String text) throws ProblemException {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw new ProblemException("this is not a day", text, "choose one in the calendar", e);
        }
    }

    private ObjectNode shown(CourseFile file) throws ProblemException {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        json.put("today", here.today().toString());
        ArrayNode days = json.putArray("days");
        file.days().forEach(day -> days.add(day.toString()));
        ArrayNode fields = json.putArray("fields");
        file.fields()
                .forEach(field -> fields.addObject()
                        .put("path", field.path())
                        .put("meaning", field.meaning())
                        .put("value", field.value()));
        courses.seen()
                .overview()
                .ifPresent(course -> json.set("plan", PlanJson.of(new CoursePlan(course.status(), here.zone()))));
        return json;
    }
}
