package org.bookholder.app.course;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.bookholder.course.Course;
import org.bookholder.course.Lesson;
import org.bookholder.course.Text;
import org.bookholder.course.edit.BurnDown;
import org.bookholder.course.edit.EditPlan;
import org.bookholder.course.edit.EditTask;
import org.bookholder.course.edit.EditTasks;
import org.bookholder.course.edit.EditText;
import org.bookholder.course.edit.EditWeek;
import org.bookholder.course.shoot.PlanText;
import org.bookholder.course.shoot.PlannedSession;
import org.bookholder.course.shoot.RecordingTask;
import org.bookholder.course.shoot.SessionPlan;

/** The plan of a course as JSON for a page: the same as {@link CoursePlan#lines()}, but with lessons by their titles. */
public final class PlanJson {
    private final CoursePlan plan;
    private final Map<String, String> titles;

    private PlanJson(CoursePlan plan) {
        this.plan = plan;
        this.titles = plan.status().course().lessons().stream()
                .collect(Collectors.toMap(Lesson::name, Lesson::title, (first, second) -> first));
    }

    /** The sessions, the weeks of editing, the costs and what is said of them. Lengths are texts, dates yyyy-mm-dd. */
    public static ObjectNode of(CoursePlan plan) {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        PlanJson writer = new PlanJson(plan);
        writer.recording(json);
        writer.editing(json);
        json.put("caution", plan.status().board().finished() ? "" : CoursePlan.CAUTION);
        return json;
    }

    private void recording(ObjectNode json) {
        CourseStatus status = plan.status();
        SessionPlan sessions = status.plan();
        json.put("toRecord", PlanText.amount(status.works()));
        json.put("limits", PlanText.sources(status.terms()));
        json.put("over", sessions.over());
        ArrayNode rows = json.putArray("sessions");
        sessions.sessions().forEach(session -> session(rows.addObject(), session));
        strings(json, "free", sessions.free().stream().map(String::valueOf).toList());
        strings(json, "left", sessions.left().stream().map(this::task).toList());
        strings(json, "why", sessions.why());
    }

    private void session(ObjectNode node, PlannedSession session) {
        node.put("day", session.date().map(String::valueOf).orElse(""));
        node.put("length", Text.hours(session.length()));
        node.put("reading", Text.hours(session.reading()));
        ArrayNode slots = node.putArray("slots");
        session.slots()
                .forEach(slot -> slots.addObject()
                        .put("at", PlanText.when(session, slot))
                        .put("use", slot.use().name())
                        .put("what", slot.work().map(this::task).orElse(""))
                        .put(
                                "lesson",
                                slot.work()
                                        .filter(RecordingTask::inOne)
                                        .map(RecordingTask::lesson)
                                        .orElse(0))
                        .put(
                                "chosen",
                                slot.work()
                                        .filter(work -> chosen(session, work))
                                        .isPresent())
                        .put("length", Text.hours(slot.length())));
    }

    /** Whether somebody has put the lesson on the session's day. */
    private boolean chosen(PlannedSession session, RecordingTask work) {
        return plan.status().course().shooting().days().stream()
                .anyMatch(day -> session.date().filter(day.date()::equals).isPresent()
                        && day.lessons().contains(work.name()));
    }

    private String task(RecordingTask task) {
        String title = title(task.name());
        return task.what().equals("whole") ? title : title + ", " + task.what();
    }

    private String title(String name) {
        return titles.getOrDefault(name, name);
    }

    private void editing(ObjectNode json) {
        CourseStatus status = plan.status();
        Course course = status.course();
        List<EditTask> tasks = EditTasks.of(status.board(), plan.zone());
        BurnDown burnDown = status.burnDown(plan.zone());
        EditPlan edit = EditPlan.of(tasks, course.editing(), burnDown.from(), 1);
        json.put("toEdit", EditText.amount(tasks));
        json.put("usual", EditText.sanity(edit.weeks().size()));
        json.put("forecast", EditText.forecast(burnDown, edit));
        json.put("sources", EditText.sources(course.editing()));
        ArrayNode weeks = json.putArray("weeks");
        for (int i = 0; i < edit.weeks().size(); i++) {
            week(
                    weeks.addObject().put("rest", edit.finishesRest(i)),
                    edit.weeks().get(i));
        }
        String launch = status.board().finished()
                ? ""
                : course.launch()
                        .map(hoped -> String.join(
                                " ",
                                EditText.launch(
                                        hoped,
                                        tasks,
                                        course.editing(),
                                        status.board().today())))
                        .orElse("");
        json.put("launch", launch);
        strings(
                json,
                "costs",
                course.costs().map(costs -> EditText.costs(costs, tasks)).orElse(List.of()));
    }

    private void week(ObjectNode node, EditWeek week) {
        node.put("begins", week.begins().toString());
        node.put("idle", week.idle());
        strings(node, "finished", week.finished().stream().map(this::title).toList());
        node.put("begun", week.begun().isEmpty() ? "" : title(week.begun()));
        node.put("hours", week.hours());
    }

    private static void strings(ObjectNode json, String name, List<String> texts) {
        ArrayNode array = json.putArray(name);
        texts.forEach(array::add);
    }
}
