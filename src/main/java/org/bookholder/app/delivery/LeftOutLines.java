package org.bookholder.app.delivery;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.bookholder.app.course.LessonSessions;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.LessonLines;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.app.session.StoredSession;
import org.bookholder.course.RecordedSession;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionState;

/** Finds the lines of a film's script that were left out on purpose: in its lesson's sessions, or in the one that holds it. */
final class LeftOutLines {
    private LeftOutLines() {}

    /** Their numbers; none if no session is found that says so. */
    static Set<Integer> of(Path film, ScriptFile lesson, Environment here) {
        try {
            return LessonLines.leftOut(lesson.script(), sessions(film, lesson, here));
        } catch (ProblemException e) {
            // A course or session that cannot be read decides nothing; the film is checked all the same.
            return Set.of();
        }
    }

    private static List<SessionState> sessions(Path film, ScriptFile lesson, Environment here) throws ProblemException {
        Optional<Path> around = Optional.ofNullable(
                        film.toAbsolutePath().normalize().getParent())
                .flatMap(folder -> Optional.ofNullable(folder.getParent()))
                .filter(SessionFolder::isSession);
        if (around.isPresent()) {
            try (StoredSession session = StoredSession.open(here, around.get())) {
                return List.of(session.state());
            }
        }
        return LessonSessions.of(Path.of(lesson.script().source()), here)
                .map(found ->
                        found.sessions().stream().map(RecordedSession::state).toList())
                .orElse(List.of());
    }
}
