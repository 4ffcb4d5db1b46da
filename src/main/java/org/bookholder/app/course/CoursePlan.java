package org.bookholder.app.course;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.course.Course;
import org.bookholder.course.Lesson;
import org.bookholder.course.Text;
import org.bookholder.course.agenda.Agenda;
import org.bookholder.course.agenda.AgendaBasis;
import org.bookholder.course.agenda.AgendaText;
import org.bookholder.course.edit.EditTask;
import org.bookholder.course.edit.EditTasks;
import org.bookholder.course.edit.EditText;
import org.bookholder.course.edit.ModuleDates;
import org.bookholder.course.shoot.PlanChange;
import org.bookholder.course.shoot.PlanDays;
import org.bookholder.course.shoot.PlanText;

/**
 * The plan for what is left to record and edit in a course.
 *
 * @param status the course's current state
 * @param zone time zone of its days
 */
public record CoursePlan(CourseStatus status, ZoneId zone) {
    static final String CAUTION = "Keep these dates to yourself; don't promise one until everything is checked.";

    /** What it says in short. */
    PlanDays days() {
        return PlanDays.of(status.course().shooting(), status.plan());
    }

    /**
     * What to do today, and why.
     *
     * @param kept the names of today's lessons as somebody has put them in order; empty for the plan's order
     */
    public Agenda agenda(Optional<List<String>> kept) {
        return Agenda.of(new AgendaBasis(
                status.board(),
                status.works(),
                status.plan(),
                status.terms(),
                status.launch(),
                status.lost(),
                zone,
                new AgendaBasis.Order(
                        RunningOrder.of(status, zone, kept), RunningOrder.begun(status, zone), kept.isPresent())));
    }

    /** When each module will be recorded and edited; none if the course has no modules. */
    List<ModuleDates> modules(List<EditTask> tasks) {
        return ModuleDates.of(status.board(), tasks, status.course().editing(), status.burnDown(zone));
    }

    /**
     * The plan as lines of text: what to do today, what moved, the remaining sessions, the edit week by week, and its costs.
     *
     * @param moved what has moved since the plan was last shown
     */
    public List<String> lines(Optional<PlanChange> moved) {
        Course course = status.course();
        List<EditTask> tasks = EditTasks.of(status.board(), zone);
        List<String> lines = new ArrayList<>();
        lines.addAll(AgendaText.of(agenda(Optional.empty())));
        lines.add("");
        Stream.concat(status.lost().stream(), moved.stream()).forEach(change -> {
            change.sentences(this::title).forEach(text -> lines.addAll(Text.wrap(text)));
            lines.add("");
        });
        lines.addAll(PlanText.of(status.works(), status.plan(), status.terms()));
        lines.add("");
        lines.addAll(EditText.of(tasks, course.editing(), status.board().today()));
        modules(tasks).forEach(module -> lines.addAll(Text.wrap(module.text() + ".")));
        course.costs().ifPresent(costs -> {
            lines.add("");
            lines.addAll(EditText.costs(costs, tasks));
        });
        if (!status.board().finished()) {
            lines.add(CAUTION);
        }
        return lines;
    }

    /** The title of a lesson; its name if it is gone. */
    String title(String lesson) {
        return status.course().lesson(lesson).map(Lesson::title).orElse(lesson);
    }
}
