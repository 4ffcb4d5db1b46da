package org.bookholder.course.edit;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.Text;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.LessonState;

/**
 * How much room there is between the forecast of a course and the day on which it is hoped to go out.
 *
 * @param today the day to which it applies
 * @param hoped the day on which it is hoped to go out; empty if none is set
 * @param finished whether nothing is missing any more
 * @param edited whether every lesson that can be read is edited
 * @param ready the day by which the edit is done by the forecast; empty if it is done, or nothing is known
 * @param unknown why nothing is known, a phrase; empty if something is
 * @param recorded the last planned recording day; empty if all is recorded, or no day is known
 * @param unwritten how many lessons can't be read yet, and are in none of these figures
 */
public record LaunchRoom(
        LocalDate today,
        Optional<LocalDate> hoped,
        boolean finished,
        boolean edited,
        Optional<LocalDate> ready,
        String unknown,
        Optional<LocalDate> recorded,
        int unwritten) {
    private static final String WHERE =
            " Set \u201cThe day you hope to be ready\u201d on the page Plan and dates, or launch: in course.yaml.";

    /** The room of a course whose board knows the days of the plan. */
    public static LaunchRoom of(Board board, ZoneId zone) {
        List<EditTask> tasks = EditTasks.of(board, zone);
        BurnDown burnDown = BurnDown.of(tasks, board.course().editing(), board.today());
        boolean edited = tasks.stream().allMatch(task -> task.done().isPresent());
        // Without days the forecast takes all lessons for recorded.
        boolean undated = board.course().shooting().days().isEmpty()
                && board.lessons().stream().anyMatch(state -> !state.recording().complete());
        Optional<LocalDate> ready = burnDown.forecast().filter(day -> !undated);
        return new LaunchRoom(
                board.today(),
                board.course().launch(),
                board.finished(),
                edited,
                ready,
                edited || ready.isPresent() ? "" : undated ? "no recording day is chosen" : burnDown.speedFrom(),
                board.lessons().stream()
                        .map(LessonState::planned)
                        .flatMap(Optional::stream)
                        .max(Comparator.naturalOrder()),
                board.course().unreadable().size());
    }

    /** How many working days (Monday to Friday) lie between the day on which it is ready and the launch; 0 or more. */
    public long spare() {
        LocalDate from = ready.filter(day -> !finished && !edited).orElse(today);
        return hoped.map(day -> workingDays(from, day)).orElse(0L);
    }

    private static long workingDays(LocalDate after, LocalDate before) {
        return after.plusDays(1).isAfter(before)
                ? 0
                : after.plusDays(1)
                        .datesUntil(before)
                        .filter(day -> day.getDayOfWeek() != DayOfWeek.SATURDAY)
                        .filter(day -> day.getDayOfWeek() != DayOfWeek.SUNDAY)
                        .count();
    }

    /** In sentences. */
    public String sentences() {
        if (finished) {
            return "Launch: " + hoped.map(this::goesOut).orElse("the course can go out. No launch day is set.");
        }
        String known = "Launch: " + hoped.map(this::until).orElse("no day is set. " + forecast() + WHERE);
        return unwritten == 0
                ? known
                : known + " " + Text.count(unwritten, "lesson") + " that can\u2019t be read yet "
                        + (unwritten == 1 ? "is" : "are") + " not counted.";
    }

    private String until(LocalDate day) {
        if (!day.isAfter(today)) {
            return (day.isBefore(today) ? day + " is over" : "today, but not all is done") + ". " + forecast()
                    + " Set a new day, or take it out.";
        }
        String begins = "on " + day + ". " + forecast() + " ";
        if (edited || ready.isEmpty()) {
            return begins + left(workingDays(today, day), "until then");
        }
        return begins
                + (ready.get().isBefore(day)
                        ? left(spare(), "to spare") + " What the checks find comes on top."
                        : late(day));
    }

    private String goesOut(LocalDate day) {
        return day.isBefore(today)
                ? "you hoped for " + day + "; the course can go out now."
                : day.equals(today)
                        ? "today, and the course can go out."
                        : "on " + day + ". The course can go out now: "
                                + Text.count(workingDays(today, day), "working day") + " to spare.";
    }

    /** What is known of the edit's end. */
    private String forecast() {
        return edited
                ? "Every lesson is edited; exports, checks and facts remain."
                : ready.map(day -> "By the forecast the edit is done by " + day + ".")
                        .orElse("Nobody knows yet when the edit will be done: " + unknown + ".");
    }

    private static String left(long days, String what) {
        return days == 0 ? "No working day is left " + what + "." : Text.count(days, "working day") + " " + what + ".";
    }

    /** How much too late it is, and what would help most. */
    private String late(LocalDate day) {
        long days = ChronoUnit.DAYS.between(day, ready.orElseThrow());
        String much = days == 0 ? "That is the launch\u2019s own day." : Text.count(days, "day") + " too late.";
        return much
                + recorded.map(last -> " Earlier recording days (the last is " + last + "), more hours")
                        .orElse(" More hours")
                + " of editing a week, simpler pictures, a shorter course or a later launch would help.";
    }
}
