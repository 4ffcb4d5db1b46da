package org.bookholder.app.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicReference;
import org.bookholder.app.session.TargetPaces;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.PaceSource;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.testing.StoredExamples;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class OwnPaceKeeperTest {
    @TempDir
    private Path folder;

    private final AtomicReference<SessionState> state = new AtomicReference<>();
    private final List<String> told = new ArrayList<>();
    private TargetPaces paces;

    @BeforeEach
    void presenter() throws ProblemException {
        state.set(Session.begin(
                ScriptReader.parse("Every wheel begins with its hub.\n", "hub.md", Format.MARKDOWN),
                FatigueLimits.defaults()));
        paces = new TargetPaces(StoredExamples.here(folder), "Ada");
    }

    @Test
    void aPaceIsKeptWhileTheSessionGoesOn() {
        OwnPaceKeeper keeper = new OwnPaceKeeper(paces, state::get, told::add);
        aims(127, PaceSource.OWN);
        keeper.look();
        assertThat(paces.own()).hasValue(127);
        assertThat(told).isEmpty();
    }

    @Test
    void aCoursesPaceIsNobodysOwn() {
        OwnPaceKeeper keeper = new OwnPaceKeeper(paces, state::get, told::add);
        aims(110, PaceSource.COURSE);
        keeper.look();
        assertThat(paces.own()).isEmpty();
    }

    /** A session that goes on was begun at the pace of then. */
    @Test
    void aPaceFromBeforeTheReadingIsNotKeptAgain() throws ProblemException {
        aims(127, PaceSource.OWN);
        paces.keep("131");
        OwnPaceKeeper keeper = new OwnPaceKeeper(paces, state::get, told::add);
        keeper.look();
        assertThat(paces.own()).hasValue(131);
    }

    private void aims(int pace, PaceSource source) {
        state.set(Session.apply(
                Objects.requireNonNull(state.get()),
                new SessionEvent.PaceAimed(StreamTime.ofSeconds(1), pace, source)));
    }
}
