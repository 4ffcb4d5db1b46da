package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.bookholder.app.course.CalendarFile;
import org.bookholder.app.course.CourseOverview;
import org.bookholder.app.course.CoursePlan;
import org.bookholder.app.course.PlanJson;
import org.bookholder.app.course.ShownPlans;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.CourseFile;
import org.bookholder.course.CourseModule;
import org.bookholder.course.Lesson;
import org.bookholder.course.LessonKind;
import org.bookholder.course.LessonNames;
import org.bookholder.course.ModuleEdit;
import org.bookholder.course.UnreadableLesson;
import org.bookholder.files.FileNames;
import org.bookholder.problem.ProblemException;

/** The plan of the course that the page shows: its days and what else is written about the course. Safe for several threads. */
final class PlanRoom {
    private final Environment here;
    private final HomeCourses courses;
    private final KeptOrders orders;
    private final CourseProfile profile;
    private Optional<Change> last = Optional.empty();

    PlanRoom(Environment here, HomeCourses courses, KeptOrders orders) {
        this.orders = orders;
        this.here = here;
        this.courses = courses;
        profile = new CourseProfile(here, courses);
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
        String before = file.text();
        Optional<CoursePlan> was = plan();
        switch (asked.path("do").asText()) {
            case "show" -> {}
            case "undo" -> undo(file, before);
            case "put" -> put(file, asked);
            case "set" ->
                file.set(asked.path("path").asText(), asked.path("value").asText());
            case "hours" ->
                file.setHours(
                        day(asked.path("day").asText()),
                        asked.path("from").asText(),
                        asked.path("hours").asText());
            case "kind" -> kind(file, asked);
            case "module_add", "module_name", "module_remove", "module_move" -> modules(new ModuleEdit(file), asked);
            case "calendar" -> writeCalendar();
            case "profile" -> profile.make(file);
            case "profile_set" ->
                profile.set(asked.path("name").asText(), asked.path("value").asText());
            case "day" ->
                file.plan(day(asked.path("day").asText()), asked.path("on").asBoolean());
            default -> throw new ProblemException("there is no such action", "plan", "load the page again");
        }
        String after = file.text();
        if (!after.equals(before)) {
            last = asked.path("do").asText().equals("undo")
                    ? Optional.empty()
                    : Optional.of(new Change(folder, before, after, what(asked)));
        }
        courses.look();
        boolean changed = !after.equals(before) && was.isPresent();
        Optional<CoursePlan> now = plan();
        if (changed) {
            now.ifPresent(plan -> new ShownPlans(here, file.folder()).told(was.get(), plan));
        }
        ObjectNode shown = shown(file);
        if (changed) {
            ArrayNode changes = shown.putArray("changes");
            now.ifPresent(plan -> PlanJson.moved(was.get(), plan).forEach(changes::add));
        }
        last.filter(change -> change.of(folder, after)).ifPresent(change -> shown.set("undo", change.what()));
        return shown;
    }

    private Optional<CoursePlan> plan() {
        return courses.seen().overview().map(course -> new CoursePlan(course.status(), here.zone()));
    }

    /** What was asked for, without its course and values: enough to name the change. */
    private static ObjectNode what(JsonNode asked) {
        ObjectNode what = JsonNodeFactory.instance.objectNode();
        for (String field : List.of("do", "script", "day", "on", "path", "title", "module")) {
            if (asked.has(field)) {
                what.set(field, asked.get(field));
            }
        }
        return what;
    }

    /**
     * The last change of a course's file.
     *
     * @param folder the course's folder
     * @param before the file's text before
     * @param after and after it
     * @param what what was asked for
     */
    private record Change(String folder, String before, String after, ObjectNode what) {
        /** Whether it is the last one of a file that stands like this: what others have written since is not undone. */
        boolean of(String course, String now) {
            return folder.equals(course) && after.equals(now);
        }
    }

    private void undo(CourseFile file, String now) throws ProblemException {
        Change change = last.filter(one -> one.of(file.folder().toString(), now))
                .orElseThrow(() -> new ProblemException(
                        "there is nothing to take back",
                        "the plan",
                        "the course's file was changed since, or not at all"));
        file.restore(change.before());
    }

    private void writeCalendar() throws ProblemException {
        HomeCourses.Seen seen = courses.seen();
        CourseOverview course = seen.overview()
                .orElseThrow(() -> new ProblemException(
                        "the course can't be read, so there is no plan for a calendar", seen.folder(), "look again"));
        CalendarFile.write(
                Path.of(seen.folder(), CalendarFile.NAME),
                new CoursePlan(course.status(), here.zone()),
                here.clock().instant());
    }

    private void put(CourseFile file, JsonNode asked) throws ProblemException {
        String script = script(asked);
        String date = asked.path("day").asText();
        Optional<LocalDate> day = date.isEmpty() ? Optional.empty() : Optional.of(day(date));
        if (day.filter(one -> one.isBefore(here.today())).isPresent()) {
            throw new ProblemException("this day is over", date, "choose a later one");
        }
        file.putOn(script, day);
        if (day.filter(here.today()::equals).isEmpty()) {
            orders.leaveOut(courses.seen().folder(), here.today(), name(script));
        }
    }

    private void modules(ModuleEdit modules, JsonNode asked) throws ProblemException {
        String title = asked.path("title").asText();
        int module = asked.path("module").asInt();
        switch (asked.path("do").asText()) {
            case "module_add" -> modules.add(title);
            case "module_name" -> modules.rename(module, title);
            case "module_remove" -> modules.remove(module);
            default -> modules.move(script(asked), module, asked.path("place").asInt(Integer.MAX_VALUE));
        }
    }

    private void kind(CourseFile file, JsonNode asked) throws ProblemException {
        String label = asked.path("kind").asText();
        if (!LessonKind.labels().contains(label)) {
            throw new ProblemException("there is no such kind of lesson", label, "choose another one");
        }
        file.setKind(script(asked), LessonKind.of(label));
    }

    /** The script that is asked about; it must be one of the course's. */
    private String script(JsonNode asked) throws ProblemException {
        String script = asked.path("script").asText();
        List<String> scripts = new ArrayList<>();
        lessons().forEach(lesson -> scripts.add(lesson.path("script").asText()));
        if (!scripts.contains(script)) {
            throw new ProblemException("the course has no such lesson", script, "look again");
        }
        return script;
    }

    /** All lessons in order, each with its script as it is named in the course's file. */
    private ArrayNode lessons() {
        ArrayNode rows = JsonNodeFactory.instance.arrayNode();
        HomeCourses.Seen seen = courses.seen();
        Path folder = Path.of(seen.folder());
        Map<Integer, ObjectNode> byNumber = new TreeMap<>();
        seen.overview().map(course -> course.status().course()).ifPresent(course -> {
            for (Lesson lesson : course.lessons()) {
                byNumber.put(
                        lesson.number(),
                        row(folder, lesson.file(), lesson.title(), lesson.kind().label())
                                .put("module", number(lesson.module())));
            }
            for (UnreadableLesson lesson : course.unreadable()) {
                byNumber.put(
                        lesson.number(),
                        row(folder, lesson.file(), lesson.name(), "").put("module", number(lesson.module())));
            }
        });
        byNumber.values().forEach(rows::add);
        return rows;
    }

    /** The number of a module, 0 for lessons that stand in none. */
    private static int number(Optional<CourseModule> module) {
        return module.map(CourseModule::number).orElse(0);
    }

    /** The name of the lesson that a script is. */
    private String name(String script) {
        HomeCourses.Seen seen = courses.seen();
        Path folder = Path.of(seen.folder());
        return seen.overview().stream()
                .flatMap(course -> course.status().course().lessons().stream())
                .filter(lesson -> LessonNames.written(folder, lesson.file()).equals(script))
                .map(Lesson::name)
                .findFirst()
                .orElseGet(() -> FileNames.stem(Path.of(script)));
    }

    private static ObjectNode row(Path folder, Path file, String title, String kind) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("script", LessonNames.written(folder, file))
                .put("title", title)
                .put("kind", kind);
    }

    /** What can be chosen, as pairs of a value and its words. */
    private static ArrayNode options(Map<String, String> choices) {
        ArrayNode options = JsonNodeFactory.instance.arrayNode();
        choices.forEach((value, words) -> options.addArray().add(value).add(words));
        return options;
    }

    private static LocalDate day(String text) throws ProblemException {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw new ProblemException("this is not a day", text, "choose one in the calendar", e);
        }
    }

    /** A value of a course's file, as a field of a form. */
    static ObjectNode field(CourseFile.Field field) {
        ObjectNode json = JsonNodeFactory.instance
                .objectNode()
                .put("path", field.path())
                .put("label", field.label())
                .put("unit", field.unit())
                .put("kind", field.kind().name())
                .put("meaning", field.meaning())
                .put("value", field.value());
        json.set("options", options(field.choices()));
        return json;
    }

    private ObjectNode shown(CourseFile file) throws ProblemException {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        json.put("today", here.today().toString());
        ArrayNode fields = json.putArray("fields");
        file.fields().forEach(field -> fields.add(field(field)));
        ArrayNode days = json.putArray("days");
        ArrayNode hours = json.putArray("hours");
        for (CourseFile.OwnHours day : file.hours()) {
            days.add(day.day().toString());
            hours.addObject()
                    .put("day", day.day().toString())
                    .put("from", day.from())
                    .put("hours", day.hours());
        }
        json.set("lessons", lessons());
        ArrayNode modules = json.putArray("modules");
        courses.seen()
                .overview()
                .ifPresent(course -> course.status()
                        .course()
                        .modules()
                        .forEach(module -> modules.addObject()
                                .put("number", module.number())
                                .put("title", module.title())));
        ArrayNode kinds = json.putArray("kinds");
        for (LessonKind kind : LessonKind.values()) {
            kinds.addObject().put("kind", kind.label()).put("words", kind.words());
        }
        profile.put(json);
        String folder = courses.seen().folder();
        plan().ifPresent(plan -> json.set(
                "plan",
                PlanJson.of(plan, orders.of(folder, here.today()), new ShownPlans(here, Path.of(folder)).show(plan))));
        json.put("unreadable", courses.seen().trouble());
        return json;
    }
}
