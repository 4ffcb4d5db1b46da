package org.bookholder.course.edit;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.course.Editing;

/**
 * Editing week by week: lessons in order, no more of them in a week than was said, and no more hours than are free after
 * the slack.
 *
 * @param weeks the weeks, without gaps
 */
public record EditPlan(List<EditWeek> weeks) {
    /** Common practice for a first course. */
    public static final int FEWEST_WEEKS = 6;

    /** Common practice for a first course. */
    public static final int MOST_WEEKS = 12;

    private static final double ALMOST_NOTHING = 1e-9;

    /** Copies the list. */
    public EditPlan {
        weeks = List.copyOf(weeks);
    }

    /**
     * Plans weeks for tasks.
     *
     * @param from the first week's first day
     * @param speed hours of the plan that one hour really does, above 0: 1 if all goes as thought
     */
    public static EditPlan of(List<EditTask> tasks, Editing editing, LocalDate from, double speed) {
        List<EditWeek> weeks = new ArrayList<>();
        double free = editing.hoursAWeek() * (1 - editing.slack());
        int task = 0;
        double left = tasks.isEmpty() ? 0 : tasks.get(0).hours() / speed;
        for (LocalDate week = from; task < tasks.size(); week = week.plusWeeks(1)) {
            double hours = free;
            List<String> finished = new ArrayList<>();
            boolean touched = false;
            while (task < tasks.size() && finished.size() < editing.lessonsAWeek() && hours > ALMOST_NOTHING) {
                double worked = Math.min(hours, left);
                hours -= worked;
                left -= worked;
                touched = left > ALMOST_NOTHING;
                if (!touched) {
                    finished.add(tasks.get(task).name());
                    task++;
                    left = task < tasks.size() ? tasks.get(task).hours() / speed : 0;
                }
            }
            weeks.add(new EditWeek(
                    week, finished, touched ? tasks.get(task).name() : "", free - hours, editing.hoursAWeek() - free));
        }
        return new EditPlan(weeks);
    }

    /** The last day of the last week; the day before {@code from} if there is nothing to do. */
    public LocalDate ends(LocalDate from) {
        return from.plusWeeks(weeks.size()).minusDays(1);
    }
}
