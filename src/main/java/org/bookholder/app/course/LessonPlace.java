package org.bookholder.app.course;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.handoff.HandOffService;
import org.bookholder.course.RecordedSession;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;

/**
 * A session, or all sessions of a lesson: what a film or a hand-off is made of.
 *
 * @param sessions their folders, the oldest first, at least one
 * @param lesson the lesson as its file is now; empty if it is one session, as that was read
 * @param unreadable the reasons why sessions that may be of the lesson could not be read, one line each
 */
public record LessonPlace(List<Path> sessions, Optional<Script> lesson, List<String> unreadable) {
    /** Copies the lists. */
    public LessonPlace {
        sessions = List.copyOf(sessions);
        unreadable = List.copyOf(unreadable);
    }

    /**
     * The session that a person named, or all sessions of a lesson.
     *
     * @throws ProblemException if there is none
     */
    public static LessonPlace of(Path place, Environment here) throws ProblemException {
        if (SessionFolder.isSession(place)) {
            return ofSession(place);
        }
        if (!Files.isRegularFile(place)) {
            throw new ProblemException(
                    Files.exists(place) ? "holds no session" : "there is no such session or lesson",
                    place.toString(),
                    "name a session's folder or a lesson's file; bookholder sessions lists them");
        }
        LessonSessions found = LessonSessions.of(place, here)
                .orElseThrow(() -> new ProblemException(
                        "is no lesson of the course around it", place.toString(), "add it to course.yaml"));
        List<Path> sessions =
                found.sessions().stream().map(RecordedSession::folder).toList();
        if (sessions.isEmpty()) {
            throw new ProblemException(
                    "nothing was recorded of it yet", place.toString(), "read it first: bookholder read " + place);
        }
        return new LessonPlace(sessions, Optional.of(found.lesson().script()), found.unreadable());
    }

    /**
     * The session that a person named; of a lesson its latest one.
     *
     * @throws ProblemException if it is a lesson of which nothing was recorded, or its course cannot be read
     */
    public static Path latest(Path place, Environment here) throws ProblemException {
        // What is no lesson's file is looked at where it is opened: a damaged session is one, too.
        return Files.isRegularFile(place) ? of(place, here).last() : place;
    }

    /** The latest of its sessions. */
    public Path last() {
        return sessions.get(sessions.size() - 1);
    }

    /** One session, as it was read. */
    public static LessonPlace ofSession(Path session) {
        return new LessonPlace(List.of(session), Optional.empty(), List.of());
    }

    /** Hands it off. */
    public HandOffService.Written handOff(HandOffService service) throws ProblemException {
        return lesson.isPresent() ? service.write(lesson.get(), sessions) : service.write(sessions.get(0));
    }

    /** What is to be known of sessions that are not in it, one sentence each: others of the lesson, and those that cannot be read. */
    public List<String> leftOut(Environment here) {
        return lesson.isPresent()
                ? unreadableSaid()
                : LessonSessions.handedOffAlone(sessions.get(0), here).stream().toList();
    }

    /** What is to be known of sessions that cannot be read, one sentence each. */
    public List<String> unreadableSaid() {
        return unreadable.stream()
                .map(why -> "A session that may be of this lesson is left out, as it cannot be read: " + why)
                .toList();
    }
}
