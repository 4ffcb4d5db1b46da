package org.bookholder.course.edit;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.course.Editing;
import org.bookholder.course.Text;

/**
 * Editing as planned and as it really went: the number of lessons left at the end of each week.
 *
 * @param from the first day of the first week
 * @param planned lessons left after each week of the plan, the first entry before it began
 * @param real lessons left after each week that is over, likewise, and today as the last entry
 * @param forecast when the edit will be finished at the speed so far; empty if that speed is unknown or everything is
 *     done
 * @param speed planned hours done per week's worth of hours; 1 while unknown, or if the hours of finished edits are known
 * @param speedFrom where the speed comes from, for people
 */
public record BurnDown(
        LocalDate from,
        List<Integer> planned,
        List<Integer> real,
        Optional<LocalDate> forecast,
        double speed,
        String speedFrom) {
    private static final int DAYS = 7;

    /** Copies the lists. */
    public BurnDown {
        planned = List.copyOf(planned);
        real = List.copyOf(real);
    }

    /** The burn-down of {@code tasks} as of {@code today}. */
    public static BurnDown of(List<EditTask> tasks, Editing editing, LocalDate today) {
        LocalDate from = editing.from().orElseGet(() -> firstDone(tasks).orElseGet(() -> firstToEdit(tasks, today)));
        List<Integer> planned = new ArrayList<>(List.of(tasks.size()));
        for (EditWeek week : EditPlan.of(tasks, editing, from, 1).weeks()) {
            planned.add(planned.get(planned.size() - 1) - week.finished().size());
        }
        Speed speed = Speed.of(tasks, editing, from, today);
        List<EditTask> open = open(tasks);
        LocalDate next = today.isBefore(from) ? from : today;
        Optional<LocalDate> forecast = open.isEmpty() || speed.value() <= 0 || waiting(tasks) > 0
                ? Optional.empty()
                : Optional.of(EditPlan.of(open, editing, next, speed.value()).ends(next));
        return new BurnDown(
                from,
                planned,
                real(tasks, from, today),
                forecast,
                speed.value(),
                waiting(tasks) == 0 ? speed.from() : Text.count(waiting(tasks), "lesson") + " without a recording day");
    }

    /** What is left of the lessons that are not edited. */
    private static List<EditTask> open(List<EditTask> tasks) {
        return tasks.stream()
                .filter(task -> task.done().isEmpty())
                .map(EditTask::rest)
                .toList();
    }

    private static long waiting(List<EditTask> tasks) {
        return tasks.stream().filter(EditTask::waits).count();
    }

    /**
     * The last day of the week in which each lesson that is still to be edited will be done, by its name, at the speed so far; none while that
     * is unknown.
     */
    Map<String, LocalDate> finishes(List<EditTask> tasks, Editing editing, LocalDate today) {
        Map<String, LocalDate> days = new HashMap<>();
        if (speed > 0) {
            List<EditTask> open = open(tasks);
            LocalDate week = today.isBefore(from) ? from : today;
            for (EditWeek one : EditPlan.of(open, editing, week, speed).weeks()) {
                LocalDate last = one.begins().plusDays(DAYS - 1);
                one.finished().forEach(name -> days.put(name, last));
            }
        }
        return days;
    }

    /** What there is to edit in the seven days from {@code today} on; as planned, if the speed so far is 0. Empty if nothing is left to edit. */
    public Optional<EditWeek> week(List<EditTask> tasks, Editing editing, LocalDate today) {
        return EditPlan.of(open(tasks), editing, today, speed > 0 ? speed : 1).weeks().stream()
                .findFirst();
    }

    private static Optional<LocalDate> firstDone(List<EditTask> tasks) {
        return tasks.stream().flatMap(t -> t.done().stream()).min(LocalDate::compareTo);
    }

    /** The first day on which there is something to edit. */
    private static LocalDate firstToEdit(List<EditTask> tasks, LocalDate today) {
        return tasks.stream()
                .map(task -> task.recorded().map(last -> last.plusDays(1)).orElse(today))
                .min(LocalDate::compareTo)
                .filter(day -> day.isAfter(today))
                .orElse(today);
    }

    private static List<Integer> real(List<EditTask> tasks, LocalDate from, LocalDate today) {
        List<Integer> left = new ArrayList<>();
        if (today.isBefore(from)) {
            return left;
        }
        for (LocalDate day = from; day.isBefore(today); day = day.plusDays(DAYS)) {
            left.add(left(tasks, day.minusDays(1)));
        }
        left.add(left(tasks, today));
        return left;
    }

    private static int left(List<EditTask> tasks, LocalDate day) {
        return (int) tasks.stream()
                .filter(t -> t.done().filter(d -> !d.isAfter(day)).isEmpty())
                .count();
    }

    /** Speed of editing relative to the plan. */
    private record Speed(double value, String from) {
        static Speed of(List<EditTask> tasks, Editing editing, LocalDate from, LocalDate today) {
            double done = 0;
            boolean measured = false;
            for (EditTask task : tasks) {
                if (task.done().isPresent()) {
                    done += task.hours();
                    measured |= task.took().isPresent();
                }
            }
            if (measured) {
                // They stand in the hours that are left already.
                return new Speed(1, "by the hours that the finished edits took");
            }
            long weeks = ChronoUnit.DAYS.between(from, today) / DAYS;
            if (weeks < 1) {
                return new Speed(1, "as planned; nothing is measured yet");
            }
            double free = editing.hoursAWeek() * (1 - editing.slack());
            return done > 0
                    ? new Speed(Math.min(1, done / (weeks * free)), "by what was finished in the weeks so far")
                    : new Speed(0, "nothing was finished in the weeks so far");
        }
    }
}
