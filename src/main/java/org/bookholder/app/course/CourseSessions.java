package org.bookholder.app.course;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.SessionFolders;
import org.bookholder.app.session.StoredSession;
import org.bookholder.course.Lesson;
import org.bookholder.course.LessonMatcher;
import org.bookholder.course.RecordedSession;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;

/**
 * The sessions of a course: those in its own folder and those in the default place.
 *
 * @param byLesson the sessions of each lesson that has any
 * @param unreadable the reasons why sessions could not be read, one line each
 */
public record CourseSessions(Map<Lesson, List<RecordedSession>> byLesson, List<String> unreadable) {
    /**
     * Finds the sessions of some lessons.
     *
     * @param own the course's own folder of sessions; need not exist
     */
    public static CourseSessions of(List<Lesson> lessons, Path own, Environment here) throws ProblemException {
        CourseSessions found = new CourseSessions(new HashMap<>(), new ArrayList<>());
        for (Path session : SessionFolders.folders(List.of(own, here.sessions()))) {
            found.add(lessons, here, session, own);
        }
        return found;
    }

    private void add(List<Lesson> lessons, Environment here, Path folder, Path own) {
        try {
            Optional<StoredSession> kept = StoredSession.open(
                    here, folder, script -> lesson(lessons, script, folder, own).isPresent());
            if (kept.isPresent()) {
                try (StoredSession session = kept.get()) {
                    if (!session.state().takes().all().isEmpty()) {
                        lesson(lessons, session.state().script(), folder, own)
                                .ifPresent(lesson -> byLesson.computeIfAbsent(lesson, none -> new ArrayList<>())
                                        .add(new RecordedSession(folder, session.state())));
                    }
                }
            }
        } catch (ProblemException e) {
            unreadable.add(e.getMessage());
        }
    }

    /**
     * The lesson that a session's script belongs to; empty if none. A session in the course's own folder was copied with it, so
     * that the file from which it was read may still be in another place.
     *
     * @param session the session's folder
     * @param own the course's own folder of sessions
     */
    static Optional<Lesson> lesson(List<Lesson> lessons, Script read, Path session, Path own) {
        Path source = Path.of(read.source()).toAbsolutePath();
        boolean copied = session.startsWith(own.toAbsolutePath().normalize());
        return LessonMatcher.lesson(
                lessons, source, read, file -> !copied && Files.exists(file) && !isOneOf(lessons, file));
    }

    /** Whether a file is that of a lesson, reached by another path, such as a link to the course's folder. */
    private static boolean isOneOf(List<Lesson> lessons, Path file) {
        return lessons.stream()
                .map(Lesson::file)
                .filter(lesson -> file.endsWith(String.valueOf(lesson.getFileName())))
                .anyMatch(lesson -> isSame(lesson, file));
    }

    private static boolean isSame(Path lesson, Path file) {
        try {
            return Files.isSameFile(lesson, file);
        } catch (IOException e) {
            return false;
        }
    }
}
