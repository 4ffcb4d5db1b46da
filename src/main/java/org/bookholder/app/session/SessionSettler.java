package org.bookholder.app.session;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.app.environment.Environment;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionSummary.Standing;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.recovery.RecoveryProgress;
import org.bookholder.runtime.recovery.SessionRecovery;
import org.bookholder.script.model.SpokenHabits;
import org.bookholder.session.SessionEvent;
import org.bookholder.speech.Ears;

/** Follows again those takes of a stored session that were interrupted before they were settled. */
public final class SessionSettler {
    private SessionSettler() {}

    /**
     * The unsettled takes, in order; none while the session is open somewhere.
     *
     * @throws ProblemException if {@code place} holds no readable session
     */
    public static List<Integer> unsettled(Environment here, Path place) throws ProblemException {
        List<Integer> takes;
        try (SessionFolder folder = SessionFolder.openForReading(place)) {
            takes = unsettled(folder);
            folder.damage().ifPresent(here.warnings()::of);
        }
        boolean open =
                !takes.isEmpty() && SessionFolder.summary(place, here.locks()).standing() == Standing.OPEN;
        return open ? List.of() : takes;
    }

    /** The same for a session that is open here. */
    public static List<Integer> unsettled(SessionFolder folder) throws ProblemException {
        return unsettled(folder.events());
    }

    /** The same for a session whose events are known. */
    static List<Integer> unsettled(List<SessionEvent> events) {
        return SessionRecovery.unsettled(events);
    }

    /** Says, before they are followed again, which takes that is about; a clause. */
    public static String announcement(List<Integer> takes) {
        String numbers = takes.stream().map(String::valueOf).collect(Collectors.joining(", "));
        return (takes.size() == 1 ? "take " + numbers + " was" : "takes " + numbers + " were")
                + " broken off; listening again to what was recorded";
    }

    /** Says that they could not be followed again, and what follows from it; a clause. */
    public static String failure(ProblemException why) {
        return "it cannot be listened to again (" + why.getMessage()
                + "); what was not settled before is not in the notes yet";
    }

    /**
     * Settles them with the model shipped with the program.
     *
     * @param progress receives the progress; may throw, which leaves the current take as it was
     * @return which takes could not be processed and why, one sentence each
     * @throws ProblemException if there is no recogniser, or the session cannot be written
     */
    public static List<String> settle(Environment here, Path place, RecoveryProgress progress) throws ProblemException {
        // Loading the recogniser takes seconds, in which a review could open the session.
        try (SessionFolder folder = SessionFolder.open(place, here.locks());
                Ears ears = here.equipment().ears(here.model())) {
            return settle(here, folder, ears, progress);
        }
    }

    /** The same for a session that is open here, with ears that are loaded already. */
    public static List<String> settle(Environment here, SessionFolder folder, Ears ears, RecoveryProgress progress)
            throws ProblemException {
        Optional<SessionEvent.Opened> opened = Replay.firstOpened(folder.events());
        SpokenHabits habits = opened.isEmpty()
                ? SpokenHabits.NONE
                : new CourseHabits(here).of(Path.of(opened.get().source()));
        return SessionRecovery.settle(folder, ears, habits, BreakLimits.of(here), progress);
    }
}
