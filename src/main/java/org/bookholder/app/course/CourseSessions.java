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
import org.bookholder.session.SessionState;

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
        here.sideBySide()
                .each(SessionFolders.folders(List.of(own, here.sessions())), folder -> read(lessons, here, folder, own))
                .forEach(found::add);
        return found;
    }

    /**
     * What was found in a folder.
     *
     * @param lesson the lesson that was recorded there; empty if none of the course was
     * @param recorded what was recorded of it
     * @param problem why it can't be read; empty if it can
     */
    private record Found(Optional<Lesson> lesson, Optional<RecordedSession> recorded, Optional<String> problem) {
        static final Found NOTHING = new Found(Optional.empty(), Optional.empty(), Optional.empty());
    }

    private static Found read(List<Lesson> lessons, Environment here, Path folder, Path own) {
        try {
            Optional<StoredSession> kept = StoredSession.open(
                    here, folder, script -> lesson(lessons, script, folder, own).isPresent());
            if (kept.isEmpty()) {
                return Found.NOTHING;
            }
            try (StoredSession session = kept.get()) {
                SessionState state = session.state();
                return state.takes().all().isEmpty()
                        ? Found.NOTHING
                        : new Found(
                                lesson(lessons, state.script(), folder, own),
                                Optional.of(new RecordedSession(folder, state)),
                                Optional.empty());
            }
        } catch (ProblemException e) {
            return new Found(Optional.empty(), Optional.empty(), Optional.of(String.valueOf(e.getMessage())));
        }
    }

    private void add(Found found) {
        found.problem().ifPresent(unreadable::add);
        found.lesson()
                .ifPresent(lesson -> byLesson.computeIfAbsent(lesson, none -> new ArrayList<>())
                        .add(found.recorded().orElseThrow()));
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
