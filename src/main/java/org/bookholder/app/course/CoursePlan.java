package org.bookholder.app.course;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.Course;
import org.bookholder.course.Text;
import org.bookholder.course.edit.EditTask;
import org.bookholder.course.edit.EditTasks;
import org.bookholder.course.edit.EditText;
import org.bookholder.course.edit.ModuleDates;
import org.bookholder.course.shoot.PlanChange;
import org.bookholder.course.shoot.PlanText;

/**
 * The plan for what is left to record and edit in a course.
 *
 * @param status the course's current state
 * @param zone time zone of its days
 */
public record CoursePlan(CourseStatus status, ZoneId zone) {
    static final String CAUTION = "Keep these dates to yourself; don't promise one until everything is checked.";

    /** What the days have changed on which nothing was recorded since the last recording; empty if there were none. */
    Optional<PlanChange> lostDays() {
        return PlanChange.byLostDays(
                status.works().works(),
                status.course().shooting(),
                status.terms(),
                status.board().lastRecorded(zone),
                status.board().today(),
                status.plan());
    }

    /** When each module will be recorded and edited; none if the course has no modules. */
    List<ModuleDates> modules(List<EditTask> tasks) {
        return ModuleDates.of(status.board(), tasks, status.course().editing(), status.burnDown(zone));
    }

    /** The plan as lines of text: the remaining sessions, the edit week by week, its costs and the expected date. */
    public List<String> lines() {
        Course course = status.course();
        List<EditTask> tasks = EditTasks.of(status.board(), zone);
        List<String> lines = new ArrayList<>();
        lostDays().ifPresent(change -> {
            change.sentences(name -> name).forEach(text -> lines.addAll(Text.wrap(text)));
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
            course.launch()
                    .ifPresent(hoped -> lines.addAll(EditText.launch(
                            hoped, tasks, course.editing(), status.board().today())));
            lines.add(CAUTION);
        }
        return lines;
    }
}
