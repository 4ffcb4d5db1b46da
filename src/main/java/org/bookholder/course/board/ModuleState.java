package org.bookholder.course.board;

import java.util.List;
import java.util.Optional;
import org.bookholder.course.CourseModule;
import org.bookholder.course.Text;

/**
 * The state of a module, or of the lessons that stand in none.
 *
 * @param module the module; empty for lessons that stand in none
 * @param lessons where each of its lessons stands, in order
 * @param unreadable how many of its lessons can't be read
 */
public record ModuleState(Optional<CourseModule> module, List<LessonState> lessons, int unreadable) {
    /** Copies the list. */
    public ModuleState {
        lessons = List.copyOf(lessons);
    }

    /** How many of its lessons can go out. */
    public long ready() {
        return lessons.stream().filter(lesson -> lesson.missing().isEmpty()).count();
    }

    /** How many lessons it has, also those that can't be read. */
    public int all() {
        return lessons.size() + unreadable;
    }

    /** How long its lessons run, in seconds. */
    public double seconds() {
        return lessons.stream().mapToDouble(LessonState::seconds).sum();
    }

    /** What stands above its lessons, for example "Module 2: Knots"; empty above lessons in no module. */
    public String heading() {
        return module.map(CourseModule::heading).orElse("");
    }

    /** How far it is, for example "2 of 6 lessons can go out". */
    public String standing() {
        if (all() == 0) {
            return "no lessons yet";
        }
        return ready() == all() ? "all can go out" : ready() + " of " + Text.count(all(), "lesson") + " can go out";
    }
}
