package org.bookholder.app.course;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.course.Costs;
import org.bookholder.course.Course;
import org.bookholder.course.Text;
import org.bookholder.course.agenda.AgendaJson;
import org.bookholder.course.board.BoardText;
import org.bookholder.course.edit.Balance;
import org.bookholder.course.edit.BurnDown;
import org.bookholder.course.edit.EditPlan;
import org.bookholder.course.edit.EditTask;
import org.bookholder.course.edit.EditTasks;
import org.bookholder.course.edit.EditText;
import org.bookholder.course.edit.EditWeek;
import org.bookholder.course.edit.ModuleDates;
import org.bookholder.course.shoot.PlanChange;
import org.bookholder.course.shoot.PlanText;
import org.bookholder.course.shoot.PlannedSession;
import org.bookholder.course.shoot.RecordingTask;
import org.bookholder.course.shoot.SessionPlan;

/** The plan of a course as JSON for a page: the same as {@link CoursePlan#lines}, but with lessons by their titles. */
public final class PlanJson {
    private final CoursePlan plan;

    private PlanJson(CoursePlan plan) {
        this.plan = plan;
    }

    /** What has moved from one plan to another, in sentences, with lessons by their titles. */
    public static List<String> moved(CoursePlan before, CoursePlan now) {
        return PlanChange.between(before.days(), now.days()).sentences(now::title);
    }

    /**
     * What to do today, the sessions, the weeks of editing, the costs and what is said of them. Lengths are texts, dates yyyy-mm-dd.
     *
     * @param kept the names of today's lessons as somebody has put them in order; empty for the plan's order
     * @param moved what has moved since the plan was last shown
     */
    public static ObjectNode of(CoursePlan plan, Optional<List<String>> kept, Optional<PlanChange> moved) {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        PlanJson writer = new PlanJson(plan);
        AgendaJson.put(json.putObject("today"), plan.agenda(kept));
        strings(
                json,
                "moved",
                Stream.concat(plan.status().lost().stream(), moved.stream())
                        .flatMap(change -> change.sentences(plan::title).stream())
                        .toList());
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
        json.put("paces", BoardText.runs(status.board()));
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
        node.put("kinds", session.kinds());
        ArrayNode slots = node.putArray("slots");
        session.slots()
                .forEach(slot -> slots.addObject()
                        .put("at", PlanText.when(session, slot))
                        .put("use", slot.use().name())
                        .put(
                                "kind",
                                slot.work().map(work -> work.kind().words()).orElse(""))
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
        return plan.title(name);
    }

    private void editing(ObjectNode json) {
        CourseStatus status = plan.status();
        Course course = status.course();
        List<EditTask> tasks = EditTasks.of(status.board(), plan.zone());
        BurnDown burnDown = status.burnDown(plan.zone());
        EditPlan edit = EditPlan.of(tasks, course.editing(), burnDown.from(), 1);
        json.put("toEdit", EditText.amount(tasks));
        json.put("waiting", EditText.waiting(tasks, this::title));
        json.put("usual", EditText.sanity(edit.weeks().size()));
        forecast(json.putObject("forecast"), burnDown, edit);
        strings(
                json,
                "modules",
                plan.modules(tasks).stream().map(ModuleDates::text).toList());
        json.put("sources", EditText.sources(course.editing(), tasks));
        ArrayNode weeks = json.putArray("weeks");
        for (int i = 0; i < edit.weeks().size(); i++) {
            week(
                    weeks.addObject().put("rest", edit.finishesRest(i)),
                    edit.weeks().get(i));
        }
        course.costs().ifPresent(costs -> costs(json.putObject("costs"), costs, tasks));
    }

    private static void forecast(ObjectNode node, BurnDown burnDown, EditPlan edit) {
        boolean done = !burnDown.real().isEmpty()
                && burnDown.real().get(burnDown.real().size() - 1) == 0;
        node.put("planned", edit.ends(burnDown.from()).toString()).put("done", done);
        node.put("day", burnDown.forecast().map(LocalDate::toString).orElse(""));
        node.put("speed", burnDown.speed()).put("from", burnDown.speedFrom());
    }

    /** Amounts of money are in the course's currency. */
    private static void costs(ObjectNode node, Costs costs, List<EditTask> tasks) {
        double hours = tasks.stream().mapToDouble(EditTask::hours).sum();
        Balance balance = Balance.of(costs, hours);
        node.put("currency", costs.currency()).put("equipment", costs.equipment());
        node.put("hours", hours).put("hour", costs.hour());
        node.put("own", balance.own()).put("ownSales", balance.ownSales());
        if (costs.hired() > 0) {
            node.put("quote", costs.hired()).put("hired", balance.hired()).put("hiredSales", balance.hiredSales());
        }
        node.put("price", costs.price()).put("kept", costs.kept());
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
