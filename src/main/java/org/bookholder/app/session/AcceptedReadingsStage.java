package org.bookholder.app.session;

import java.nio.file.Path;
import java.util.function.Supplier;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Stage;
import org.bookholder.session.Remarks;
import org.bookholder.session.SessionState;
import org.jspecify.annotations.Nullable;

/**
 * Keeps readings that are accepted in a session at once, so that the presenter's next session starts with them even if the program is
 * killed.
 */
public final class AcceptedReadingsStage implements Stage {
    private final Path session;
    private final HeardAsKeeper keeper;
    private final Supplier<SessionState> state;
    private @Nullable Remarks seen;

    /** Watches the state of the session in a folder. */
    public AcceptedReadingsStage(Path session, HeardAsKeeper keeper, Supplier<SessionState> state) {
        this.session = session;
        this.keeper = keeper;
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
        Remarks now = state.get().remarks();
        if (now.equals(seen)) {
            return 0;
        }
        keep(now);
        seen = now;
        return 1;
    }

    @Override
    public void onClose() {
        keep(state.get().remarks());
        try {
            CourseHabits.keep(session, state.get());
        } catch (ProblemException e) {
            // The journal reports a disk that can't be written; what was said is found again in the session.
        }
    }

    private void keep(Remarks now) {
        try {
            keeper.keep(now.heardAs());
        } catch (ProblemException e) {
            // It is tried again at the next remark and at the end; the journal reports a disk that can't be written.
        }
    }
}
