package org.bookholder.app.delivery;

import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.course.Course;
import org.bookholder.course.CourseReader;
import org.bookholder.delivery.Profile;
import org.bookholder.problem.ProblemException;

/**
 * An exported film and what to check it against.
 *
 * @param film the film's file
 * @param course the course it belongs to, if any
 * @param profile its requirements
 * @param lesson its script, if there is one
 * @param leftOut the lines of the script that the film does without on purpose
 */
public record ExportJob(
        Path film, Optional<Course> course, Profile profile, Optional<ScriptFile> lesson, Set<Integer> leftOut) {
    /** Copies the set. */
    public ExportJob {
        leftOut = Set.copyOf(leftOut);
    }

    /** Finds the course and script of a film; anything named in {@code choices} takes precedence. */
    public static ExportJob of(Path film, Choices choices, Environment here) throws ProblemException {
        Optional<Path> folder = CourseReader.around(film);
        Optional<Course> course = folder.isEmpty() ? Optional.empty() : Optional.of(CourseReader.read(folder.get()));
        Optional<Path> named = choices.profile().or(() -> course.flatMap(Course::delivery));
        Profile profile = named.isPresent() ? DeliveryProfiles.read(named.get(), here) : choices.usual();
        Optional<ScriptFile> lesson = lesson(film, course, choices);
        Set<Integer> leftOut = lesson.map(l -> LeftOutLines.of(film, l, here)).orElse(Set.of());
        return new ExportJob(film, course, profile, lesson, leftOut);
    }

    private static Optional<ScriptFile> lesson(Path film, Optional<Course> course, Choices choices)
            throws ProblemException {
        if (!choices.words()) {
            return Optional.empty();
        }
        Optional<Path> script = choices.script()
                .or(() -> course.flatMap(c -> c.lessonOf(film)).map(org.bookholder.course.Lesson::file))
                .or(() -> ExportScriptFinder.of(film));
        return script.isEmpty() ? Optional.empty() : Optional.of(ScriptFile.read(script.get()));
    }

    /** The same film, of whose script these lines are left out on purpose. */
    public ExportJob without(Set<Integer> lines) {
        return new ExportJob(film, course, profile, lesson, lines);
    }

    /**
     * Choices made on the command line.
     *
     * @param profile the profile's file
     * @param usual the profile if no file is named
     * @param script the script's file
     * @param words whether words are checked at all
     */
    public record Choices(Optional<Path> profile, Profile usual, Optional<Path> script, boolean words) {}
}
