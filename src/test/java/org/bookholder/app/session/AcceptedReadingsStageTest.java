package org.bookholder.app.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.bookholder.app.environment.Environment;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.handoff.ExampleSession;
import org.bookholder.journal.ReadRightNotes;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Decision;
import org.bookholder.session.Remark;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.testing.StoredExamples;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class AcceptedReadingsStageTest {
    @TempDir
    private Path folder;

    /** If the program is killed, the recogniser's mistakes must not be reported to the presenter again. */
    @Test
    void savesAcceptedReadingsAsSoonAsTheyAreDecided() throws ProblemException {
        AtomicReference<SessionState> state = new AtomicReference<>(ExampleSession.state());
        Environment here = StoredExamples.here(folder.resolve("data"));
        HeardAsKeeper.begin(folder, "Ann");
        AcceptedReadingsStage learning = new AcceptedReadingsStage(folder, new HeardAsKeeper(here, folder), state::get);
        learning.doWork();
        assertThat(ReadRightNotes.of(folder))
                .hasValueSatisfying(n -> assertThat(n.readRight()).isEmpty());
        state.set(Session.apply(
                Session.begin(ExampleSession.state().script(), FatigueLimits.defaults()), withDecision()));
        learning.doWork();
        assertThat(ReadRightNotes.of(folder))
                .hasValueSatisfying(
                        n -> assertThat(n.readRight()).extracting("written").contains("spokes"));
        assertThat(new HeardAs(here, "Ann").known()).extracting("written").contains("spokes");
    }

    private static List<SessionEvent> withDecision() {
        List<SessionEvent> events = new ArrayList<>(ExampleSession.events());
        events.add(new SessionEvent.Remarked(
                StreamTime.ofSeconds(18), new Remark.Decided(2, Decision.Choice.NOT_A_FAULT, 1, 2)));
        return events;
    }
}
