package org.bookholder.app.film;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.course.LessonSessions;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.RecordedSession;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;

/**
 * What a film is made of.
 *
 * @param sessions the folders of its sessions, the oldest first, at least one
 * @param lesson the lesson as its file is now; empty if it is made of one session, as that was read
 */
public record FilmPlace(List<Path> sessions, Optional<Script> lesson) {
    /** Copies the list. */
    public FilmPlace {
        sessions = List.copyOf(sessions);
    }

    /**
     * The session that a person named, or all sessions of a lesson.
     *
     * @throws ProblemException if there is none
     */
    public static FilmPlace of(Path place, Environment here) throws ProblemException {
        if (SessionFolder.isSession(place)) {
            return new FilmPlace(List.of(place), Optional.empty());
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
        return new FilmPlace(sessions, Optional.of(found.lesson().script()));
    }
}
