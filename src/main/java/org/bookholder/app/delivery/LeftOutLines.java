package org.bookholder.app.delivery;

import java.nio.file.Path;
import java.util.Set;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.LessonLines;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.course.RecordedSession;

/** Finds the lines of a film's script that were left out on purpose: in its lesson's sessions, or in the one that holds it. */
final class LeftOutLines {
    private LeftOutLines() {}

    /** Their numbers; none if no session is found that says so. */
    static Set<Integer> of(Path film, ScriptFile lesson, Environment here) {
        return LessonLines.leftOut(
                lesson.script(),
                FilmSessions.of(film, lesson, here).stream()
                        .map(RecordedSession::state)
                        .toList());
    }
}
