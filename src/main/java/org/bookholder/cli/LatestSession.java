package org.bookholder.cli;

import java.nio.file.Path;
import org.bookholder.app.course.LessonPlace;
import org.bookholder.app.environment.Environment;
import org.bookholder.problem.ProblemException;

/** Takes a lesson's file where a session is wanted: then it is the lesson's latest one, which is said. */
final class LatestSession {
    private LatestSession() {}

    /**
     * The session's folder.
     *
     * @param place a session's folder, or a lesson's file
     */
    static Path of(Path place, Environment here, Terminal terminal) throws ProblemException {
        Path session = LessonPlace.latest(place, here);
        if (!session.equals(place)) {
            terminal.err().println("The lesson's latest session: " + session);
        }
        return session;
    }
}
