package org.bookholder.app.course;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.Course;
import org.bookholder.course.CourseReader;
import org.bookholder.course.EditingProgress;
import org.bookholder.course.FactChecks;
import org.bookholder.course.FormerNames;
import org.bookholder.course.Lesson;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.AgeingFact;

/** Marks what only people can know: lessons as edited, facts as looked at; with undo. Used by one thread at a time. */
public final class EditMarks {
    /** Largest number of hours accepted for an edit. */
    public static final double MOST_HOURS = 1000;

    private final Environment here;
    private final Path folder;
    private final Deque<TakeBack> before = new ArrayDeque<>();

    /** Takes a mark back by another one. */
    private interface TakeBack {
        void run() throws ProblemException;
    }

    public EditMarks(Environment here, Path folder) {
        this.here = here;
        this.folder = folder;
    }

    /** How many marks can be undone, one after another. */
    int undoable() {
        return before.size();
    }

    /**
     * Marks a lesson as edited, or as not edited after all.
     *
     * @param hours hours that the edit took; 0 if not given
     */
    public void edited(String name, boolean done, double hours) throws ProblemException {
        Lesson lesson = lesson(name);
        EditingProgress progress = EditingProgress.read(folder);
        progress.edited(here.clock().instant(), lesson, done, hours).write(folder);
        Course course = CourseReader.readable(folder);
        Optional<EditingProgress.Edited> was =
                progress.renamed(FormerNames.of(course, Map.of())).edited(lesson);
        before.push(() -> EditingProgress.read(folder)
                .edited(
                        was.map(EditingProgress.Edited::when)
                                .orElseGet(() -> here.clock().instant()),
                        lesson(lesson.name()),
                        was.isPresent(),
                        was.map(EditingProgress.Edited::hours).orElse(0.0))
                .write(folder));
    }

    /**
     * Decides that what a line says was looked at and is still right, or takes that back: for all facts of the line.
     *
     * @param line the line's number, from 1
     */
    public void lookedAt(String name, int line, boolean right) throws ProblemException {
        Lesson lesson = lesson(name);
        List<AgeingFact> facts = lesson.script().facts().stream()
                .filter(fact -> fact.line() == line)
                .toList();
        if (facts.isEmpty()) {
            throw new ProblemException(
                    "line " + line + " of " + lesson.name() + " holds no fact to check",
                    folder.toString(),
                    "bookholder course lists them with their lines");
        }
        FactChecks checks = FactChecks.read(folder);
        FactChecks more = checks;
        for (AgeingFact fact : facts) {
            more = more.decided(here.clock().instant(), lesson, fact, right);
        }
        more.write(folder);
        before.push(() -> takeBack(lesson, facts, checks));
    }

    private void takeBack(Lesson lesson, List<AgeingFact> facts, FactChecks was) throws ProblemException {
        FactChecks back = FactChecks.read(folder);
        for (AgeingFact fact : facts) {
            Optional<Instant> when = was.lookedAt(lesson, fact);
            back = back.decided(when.orElseGet(() -> here.clock().instant()), lesson, fact, when.isPresent());
        }
        back.write(folder);
    }

    /** Undoes the last mark. Nothing is deleted: a new mark overrides the earlier one. */
    void undo() throws ProblemException {
        if (before.isEmpty()) {
            throw new ProblemException("there is nothing to take back", folder.toString(), "mark a lesson first");
        }
        before.element().run();
        before.pop();
    }

    /**
     * The name of the lesson that a person means by a name, a title or a number.
     *
     * @throws ProblemException if there is none, or more than one
     */
    public String meant(String said) throws ProblemException {
        return new LessonChoice(folder).meant(said).name();
    }

    private Lesson lesson(String name) throws ProblemException {
        return new LessonChoice(folder).named(name);
    }
}
