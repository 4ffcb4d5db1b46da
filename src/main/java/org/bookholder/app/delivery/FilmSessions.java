package org.bookholder.app.delivery;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.course.LessonSessions;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.app.session.StoredSession;
import org.bookholder.course.RecordedSession;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;

/** Finds the sessions that a film was cut from: the one that it lies in, or all of its lesson. */
final class FilmSessions {
    private FilmSessions() {}

    /** The oldest first; none if no session is found, or the course or session cannot be read. */
    static List<RecordedSession> of(Path film, ScriptFile lesson, Environment here) {
        try {
            Optional<Path> around = Optional.ofNullable(
                            film.toAbsolutePath().normalize().getParent())
                    .flatMap(folder -> Optional.ofNullable(folder.getParent()))
                    .filter(SessionFolder::isSession);
            if (around.isPresent()) {
                try (StoredSession session = StoredSession.open(here, around.get())) {
                    return session.state().takes().all().isEmpty()
                            ? List.of()
                            : List.of(new RecordedSession(around.get(), session.state()));
                }
            }
            return LessonSessions.of(Path.of(lesson.script().source()), here)
                    .map(LessonSessions::sessions)
                    .orElse(List.of());
        } catch (ProblemException e) {
            // The film is checked all the same.
            return List.of();
        }
    }
}
