package org.bookholder.app.delivery;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.LessonLines;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.course.Course;
import org.bookholder.course.CourseReader;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;
import org.bookholder.delivery.Finding;
import org.bookholder.delivery.Profile;
import org.bookholder.files.FileNames;
import org.bookholder.problem.ProblemException;

/**
 * An exported film and what to check it against.
 *
 * @param film the film's file
 * @param course the course it belongs to, if any
 * @param profile its requirements, with its lesson's own name among the names allowed
 * @param lesson its script, if there is one
 * @param unread why the script that was found cannot be read, if so
 * @param sessions the sessions that it was cut from, as far as they are found, the oldest first
 * @param leftOut the lines of the script that the film does without on purpose
 * @param stills where it is known to show stills that are meant
 */
public record ExportJob(
        Path film,
        Optional<Course> course,
        Profile profile,
        Optional<ScriptFile> lesson,
        Optional<ProblemException> unread,
        List<RecordedSession> sessions,
        Set<Integer> leftOut,
        List<Finding.Place> stills) {
    /** Copies set and lists. */
    public ExportJob {
        sessions = List.copyOf(sessions);
        stills = List.copyOf(stills);
        leftOut = Set.copyOf(leftOut);
    }

    /**
     * Finds the course and script of a film; anything named in {@code choices} takes precedence.
     *
     * @throws ProblemException if something that was named cannot be read; a script that was only found is left out then
     */
    public static ExportJob of(Path film, Choices choices, Environment here) throws ProblemException {
        Optional<Path> folder = CourseReader.around(film);
        Optional<Course> course =
                folder.isEmpty() ? Optional.empty() : Optional.of(CourseReader.readable(folder.get()));
        Optional<Path> named = choices.profile().or(() -> course.flatMap(Course::delivery));
        Profile asked = named.isPresent() ? DeliveryProfiles.read(named.get(), here) : choices.usual();
        Profile profile = name(film, choices, course).map(asked::ofLesson).orElse(asked);
        Optional<ScriptFile> lesson = Optional.empty();
        Optional<ProblemException> unread = Optional.empty();
        if (choices.words() && choices.script().isPresent()) {
            lesson = Optional.of(ScriptFile.read(choices.script().get()));
        } else if (choices.words()) {
            try {
                Optional<Path> found = script(film, course);
                lesson = found.isEmpty() ? Optional.empty() : Optional.of(ScriptFile.read(found.get()));
            } catch (ProblemException e) {
                unread = Optional.of(e);
            }
        }
        List<RecordedSession> sessions =
                lesson.map(l -> FilmSessions.of(film, l, here)).orElse(List.of());
        Set<Integer> leftOut = lesson.map(l -> leftOut(l, sessions)).orElse(Set.of());
        return new ExportJob(film, course, profile, lesson, unread, sessions, leftOut, List.of());
    }

    private static Set<Integer> leftOut(ScriptFile lesson, List<RecordedSession> sessions) {
        return LessonLines.leftOut(
                lesson.script(), sessions.stream().map(RecordedSession::state).toList());
    }

    /** The name of the lesson whose film it is. */
    private static Optional<String> name(Path film, Choices choices, Optional<Course> course) {
        return choices.script()
                .map(CourseReader::nameOf)
                .or(() -> course.flatMap(c -> c.lessonOf(film)).map(Lesson::name))
                .or(() -> ExportScriptFinder.of(film).map(FileNames::stem));
    }

    private static Optional<Path> script(Path film, Optional<Course> course) {
        return course.flatMap(c -> c.lessonOf(film)).map(Lesson::file).or(() -> ExportScriptFinder.of(film));
    }

    /** The same film as it was made: without these lines of its script, and with stills at these places. */
    public ExportJob made(Set<Integer> without, List<Finding.Place> withStills) {
        return new ExportJob(film, course, profile, lesson, unread, sessions, without, withStills);
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
