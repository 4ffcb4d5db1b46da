package org.bookholder.course.edit;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.Editing;

/**
 * A plan for editing week by week: lessons in order, none before it is recorded, those without a day for that left out, no more per week than the given
 * maximum, and no more hours than remain after the slack.
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
     * @param speed planned hours done per real hour, above 0; 1 if everything goes as planned
     */
    public static EditPlan of(List<EditTask> tasks, Editing editing, LocalDate from, double speed) {
        List<EditWeek> weeks = new ArrayList<>();
        List<EditTask> open =
                new ArrayList<>(tasks.stream().filter(task -> !task.waits()).toList());
        double free = editing.hoursAWeek() * (1 - editing.slack());
        Optional<EditTask> begun = Optional.empty();
        double left = 0;
        for (LocalDate week = from; !open.isEmpty(); week = week.plusWeeks(1)) {
            double hours = free;
            List<String> finished = new ArrayList<>();
            while (finished.size() < editing.lessonsAWeek() && hours > ALMOST_NOTHING) {
                if (begun.isEmpty()) {
                    begun = next(open, week);
                    left = begun.map(EditTask::hours).orElse(0.0) / speed;
                }
                if (begun.isEmpty()) {
                    break;
                }
                double worked = Math.min(hours, left);
                hours -= worked;
                left -= worked;
                if (left <= ALMOST_NOTHING) {
                    finished.add(begun.get().name());
                    open.remove(begun.get());
                    begun = Optional.empty();
                }
            }
            String name = begun.map(EditTask::name).orElse("");
            weeks.add(new EditWeek(week, finished, name, free - hours, editing.hoursAWeek() - free));
        }
        return new EditPlan(weeks);
    }

    /** Whether the first lesson that is finished in a week, counted from 0, was started in an earlier one. */
    public boolean finishesRest(int week) {
        List<String> finished = weeks.get(week).finished();
        return week > 0
                && !finished.isEmpty()
                && finished.get(0).equals(weeks.get(week - 1).begun());
    }

    private static Optional<EditTask> next(List<EditTask> open, LocalDate week) {
        return open.stream().filter(task -> task.canBeginOn(week)).findFirst();
    }

    /** The last day of the last week; the day before {@code from} if there is no work. */
    public LocalDate ends(LocalDate from) {
        return from.plusWeeks(weeks.size()).minusDays(1);
    }
}
