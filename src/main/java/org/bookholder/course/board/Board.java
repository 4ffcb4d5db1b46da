package org.bookholder.course.board;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.function.Predicate;
import org.bookholder.course.Course;
import org.bookholder.course.CourseModule;
import org.bookholder.course.Measured;

/**
 * The state of a course and of each of its lessons.
 *
 * @param course the course
 * @param measured pace and ratio from the presenter's sessions
 * @param lessons where each lesson stands, in order
 * @param facts the facts in its scripts that may be outdated some day, in order
 * @param today the day to which the board applies
 */
public record Board(Course course, Measured measured, List<LessonState> lessons, List<DueFact> facts, LocalDate today) {
    /** Copies the lists. */
    public Board {
        lessons = List.copyOf(lessons);
        facts = List.copyOf(facts);
    }

    /** The same with the days on which lessons, by their numbers, are to be recorded. */
    public Board planned(IntFunction<Optional<LocalDate>> days) {
        return new Board(
                course,
                measured,
                lessons.stream()
                        .map(state -> state.planned(days.apply(state.lesson().number())))
                        .toList(),
                facts,
                today);
    }

    /**
     * Whether the course is finished: every lesson recorded, without open pickups, edited, exported and checked, none unreadable, and no fact
     * due that nobody looked at. Before that, nobody should be given a launch date.
     */
    public boolean finished() {
        return course.unreadable().isEmpty()
                && due().isEmpty()
                && lessons.stream().allMatch(lesson -> lesson.missing().isEmpty());
    }

    /** The modules in order, each with its lessons; before them those in no module, if there are any. */
    public List<ModuleState> modules() {
        List<ModuleState> modules = new ArrayList<>();
        ModuleState none = module(Optional.empty());
        if (none.all() > 0) {
            modules.add(none);
        }
        course.modules().forEach(module -> modules.add(module(Optional.of(module))));
        return modules;
    }

    private ModuleState module(Optional<CourseModule> module) {
        return new ModuleState(
                module,
                lessons.stream()
                        .filter(state -> state.lesson().module().equals(module))
                        .toList(),
                (int) course.unreadable().stream()
                        .filter(lesson -> lesson.module().equals(module))
                        .count());
    }

    /** The day on which something was recorded last; empty if nothing was. */
    public Optional<LocalDate> lastRecorded(ZoneId zone) {
        return lessons.stream()
                .flatMap(state -> state.recording().last().stream())
                .max(Comparator.naturalOrder())
                .map(when -> LocalDate.ofInstant(when, zone));
    }

    /** How many lessons are recorded: every line clean, or kept by somebody. */
    public int recorded() {
        return (int)
                lessons.stream().filter(state -> state.recording().complete()).count();
    }

    /** How many lessons have lines to pick up, over all their sessions; those that are partly recorded, too. */
    public int withPickups() {
        return (int) lessons.stream()
                .filter(state -> !state.recording().pickups().isEmpty())
                .count();
    }

    /** The first unfinished lesson; empty if the course is finished. */
    public Optional<LessonState> next() {
        return lessons.stream().filter(lesson -> !lesson.missing().isEmpty()).findFirst();
    }

    /** Facts in the scripts that are due for checking today or earlier and that nobody looked at, the longest overdue first. */
    public List<DueFact> due() {
        return facts(fact -> isDue(fact) && fact.lookedAt().isEmpty());
    }

    /** Facts that are due, and that somebody looked at and found to be right. */
    public List<DueFact> lookedAt() {
        return facts(fact -> isDue(fact) && fact.lookedAt().isPresent());
    }

    /** Facts in the scripts that will be due for checking after today, the next first. */
    public List<DueFact> ageing() {
        return facts(fact -> !isDue(fact));
    }

    private boolean isDue(DueFact fact) {
        return !fact.fact().due().isAfter(today);
    }

    private List<DueFact> facts(Predicate<DueFact> wanted) {
        return facts.stream()
                .filter(wanted)
                .sorted(Comparator.comparing(due -> due.fact().due()))
                .toList();
    }
}
