package org.bookholder.app.course;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.board.Recording;
import org.bookholder.problem.ProblemException;

/** The session of a lesson in which its open lines are picked up, from the page as in the terminal. */
public final class PickupSession {
    private PickupSession() {}

    /** The session that began last of those in which lines are still to be picked up, else the newest. */
    static Optional<RecordedSession> of(List<RecordedSession> sessions) {
        Comparator<RecordedSession> newest = Comparator.comparing(RecordedSession::began);
        return sessions.stream()
                .filter(session -> !session.state().lines().pickups().isEmpty())
                .max(newest)
                .or(() -> sessions.stream().max(newest));
    }

    /**
     * The one of a lesson's file.
     *
     * @return its folder; empty if no line of the lesson is to be picked up
     * @throws ProblemException if the course around the file cannot be read
     */
    public static Optional<Path> of(Path script, Environment here) throws ProblemException {
        Optional<LessonSessions> found = LessonSessions.of(script, here);
        return found.filter(lesson -> !Recording.of(lesson.lesson().script(), lesson.sessions())
                        .pickups()
                        .isEmpty())
                .flatMap(lesson -> of(lesson.sessions()))
                .map(RecordedSession::folder);
    }
}
