package org.bookholder.app.review;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.bookholder.app.session.CourseHabits;
import org.bookholder.journal.ReadRightNotes;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Stage;
import org.bookholder.session.AcceptedReading;
import org.bookholder.session.SessionState;

/**
 * Saves readings accepted in a review beside the session at once, so that the next session of the course starts with
 * them even if the program is killed.
 */
public final class AcceptedReadingsStage implements Stage {
    private final Path session;
    private final String course;
    private final Supplier<SessionState> state;
    private long seen = -1;
    private Optional<List<AcceptedReading>> kept = Optional.empty();

    public AcceptedReadingsStage(Path session, String course, Supplier<SessionState> state) {
        this.session = session;
        this.course = course;
        this.state = state;
    }

    @Override
    public String role() {
        return "accepted readings";
    }

    @Override
    public Criticality criticality() {
        return Criticality.RESTARTABLE;
    }

    @Override
    public int doWork() {
        SessionState now = state.get();
        if (now.revision() == seen) {
            return 0;
        }
        seen = now.revision();
        keep(now.remarks().readRight());
        return 1;
    }

    @Override
    public void onClose() {
        keep(state.get().remarks().readRight());
        try {
            CourseHabits.keep(session, state.get());
        } catch (ProblemException e) {
            // The journal reports a disk that can't be written; what was said is found again in the session.
            kept = Optional.empty();
        }
    }

    /** A failure must not end the review; it is tried again, and the journal reports a disk that cannot be written. */
    private void keep(List<AcceptedReading> learned) {
        if (kept.equals(Optional.of(learned))) {
            return;
        }
        try {
            new ReadRightNotes(course, learned).keep(session);
            kept = Optional.of(learned);
        } catch (ProblemException e) {
            kept = Optional.empty();
        }
    }
}
