package org.bookholder.app.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.handoff.ExampleSession;
import org.bookholder.journal.ReadRightNotes;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Review;
import org.bookholder.runtime.record.FaultLog;
import org.bookholder.runtime.record.Overflow;
import org.bookholder.runtime.stage.FaultListener;
import org.bookholder.runtime.stage.ManualScheduler;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.session.AcceptedReading;
import org.bookholder.session.Decision;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.Remark;
import org.bookholder.session.Request;
import org.bookholder.session.Session;
import org.bookholder.session.SessionState;
import org.bookholder.testing.FakeClock;
import org.bookholder.testing.FakeJournal;
import org.bookholder.testing.FaultyStage;
import org.bookholder.testing.StoredExamples;
import org.bookholder.wording.TroubleText;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A fault in the saving of accepted readings, half a minute into a review in virtual time: see docs/faults.md. */
final class AcceptedReadingsFaultTest implements FaultListener {
    private static final double FAULT = 30;

    @TempDir
    private Path folder;

    private final FakeClock clock = new FakeClock();
    private final StringBuilder log = new StringBuilder();
    private final List<String> told = new ArrayList<>();
    private final FakeJournal journal = new FakeJournal();
    private final Review review =
            new Review(journal, Overflow.NONE, reviewed(), clock, new FaultLog(log::append, clock));
    private final ManualScheduler crew = new ManualScheduler(clock, this);

    @BeforeEach
    void begin() throws ProblemException {
        HeardAsKeeper.begin(folder, "Ann");
        review.begin(crew);
    }

    @Test
    void areSavedAgainAfterAFault() {
        plant(1);
        pass(FAULT - 1);
        assertThat(saved()).isEmpty();
        accept();
        pass(5);
        assertThat(told).containsExactly("A part of the program has failed (accepted readings); the reading goes on.");
        assertThat(log)
                .containsOnlyOnce("stage '")
                .contains("stage 'accepted readings': failed, is started again", "a planted fault");
        assertThat(saved()).extracting(AcceptedReading::written).contains("spokes");
    }

    @Test
    void theReviewContinuesWithoutThemIfTheyKeepFailing() {
        plant(6);
        pass(FAULT - 1);
        accept();
        pass(30);
        assertThat(log.toString().split("is started again", -1)).hasSize(6);
        assertThat(log).contains("stage 'accepted readings': failed, is done without");
        assertThat(told).containsExactly("A part of the program has failed (accepted readings); the reading goes on.");
        review.ask(state -> List.of(new NoteCommand.Add(new Remark.Noted(1, "too quick", false))), unheard());
        pass(1);
        assertThat(review.state().get().remarks().notes()).extracting("text").contains("too quick");
        assertThat(journal.events()).as("the decision and the note").hasSize(2);
    }

    private void plant(int times) {
        HeardAsKeeper keeper = new HeardAsKeeper(StoredExamples.here(folder.resolve("data")), folder);
        AcceptedReadingsStage stage = new AcceptedReadingsStage(folder, keeper, review.state());
        crew.takeOn(new FaultyStage(stage, clock, Math.round(FAULT * 1e9), times));
    }

    private void accept() {
        review.ask(
                state -> List.of(new NoteCommand.Add(new Remark.Decided(2, Decision.Choice.NOT_A_FAULT, 1, 2))),
                unheard());
    }

    private List<AcceptedReading> saved() {
        return ReadRightNotes.of(folder).orElseThrow().readRight();
    }

    private void pass(double seconds) {
        for (int i = 0; i < seconds * 10; i++) {
            crew.runUntilIdle(1000);
            clock.passMillis(100);
            String trouble = TroubleText.of(review.state().get().troubles());
            if (!trouble.isEmpty() && !told.contains(trouble)) {
                told.add(trouble);
            }
        }
    }

    private static SessionState reviewed() {
        return Session.apply(
                Session.begin(ExampleSession.state().script(), FatigueLimits.defaults()), ExampleSession.events());
    }

    private static Request.Reply unheard() {
        return new Request.Reply() {
            @Override
            public void done() {}

            @Override
            public void refused(String why) {
                throw new AssertionError(why);
            }

            @Override
            public void failed(String what) {
                throw new AssertionError(what);
            }
        };
    }

    @Override
    public void failed(StageFault fault) {
        review.failed(fault);
    }

    @Override
    public void recovered(String role) {
        review.recovered(role);
    }
}
