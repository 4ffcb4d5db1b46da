package org.bookholder.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.OutputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.source.Sources;
import org.bookholder.session.Decision;
import org.bookholder.session.Mover;
import org.bookholder.session.Note;
import org.bookholder.session.Remark;
import org.bookholder.session.Request;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.speech.AudioSource;
import org.bookholder.testing.ReadingRig;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/** Two producers ask a running session for the same thing at the same moment: both get it, and neither undoes the other's. */
final class TwoProducersTest {
    private final ReadingRig rig = new ReadingRig(
            Scripts.of("Every wheel begins with its hub.", "Count the spokes twice.", "Then lace the first side."),
            List.of(),
            true);
    private final Reading reading = begin();
    private final Actions actions = new Actions(new Desk(reading), rig.clock);
    private final Told told = new Told();

    private Reading begin() {
        IntStream.range(0, 3).forEach(i -> rig.alsoHas(silence()));
        Reading begun = rig.begin(silence());
        rig.pass(1);
        return begun;
    }

    private AudioSource silence() {
        try {
            return Sources.silent(rig.clock).open();
        } catch (ProblemException e) {
            throw new AssertionError(e);
        }
    }

    /**
     * Both ask before the session has handled either request; then one after the other, which must give the same
     * result.
     */
    private void both(String action) {
        actions.act(action, told);
        actions.act(action, told);
        rig.pass(0.5);
        actions.act(action, told);
        rig.pass(0.5);
    }

    /** Asks, and waits for the answer. */
    private void ask(String action) {
        actions.act(action, told);
        rig.pass(0.5);
    }

    private SessionState state() {
        return reading.state().get();
    }

    @Test
    void twoSimultaneousHoldsAreOneHold() {
        both("{\"do\":\"hold\"}");
        assertThat(state().takes().held()).isTrue();
        both("{\"do\":\"go_on\"}");
        assertThat(state().takes().held()).isFalse();
        assertThat(rig.journal.events(SessionEvent.Held.class)).hasSize(1);
        assertThat(rig.journal.events(SessionEvent.Resumed.class)).hasSize(1);
        assertThat(told.all).hasSize(6).containsOnly("done");
    }

    @Test
    void twoSimultaneousNextTakesBeginOneTake() {
        both("{\"do\":\"next_take\",\"take\":1}");
        assertThat(state().takes().all()).hasSize(2);
        assertThat(state().takes().rolling()).isTrue();
        assertThat(told.all).hasSize(3).containsOnly("done");
    }

    @Test
    void aCutMeantForTheTakeBeforeDoesNotEndANewOne() {
        actions.act("{\"do\":\"next_take\",\"take\":1}", told);
        rig.pass(0.5);
        for (String action : List.of("cut", "break")) {
            actions.act("{\"do\":\"" + action + "\",\"take\":1}", told);
            rig.pass(0.5);
        }
        actions.act("{\"do\":\"next_take\",\"take\":1,\"line\":3}", told);
        rig.pass(0.5);
        assertThat(state().takes().rolling()).isTrue();
        assertThat(state().takes().all()).hasSize(2);
        assertThat(told.all)
                .containsExactly("done", "done", "done", "refused: someone else has just started another take");
    }

    @Test
    void twoSimultaneousBreaksAreOneBreak() {
        both("{\"do\":\"break\",\"take\":1}");
        assertThat(state().remarks().breakSince()).isPresent();
        both("{\"do\":\"back\"}");
        assertThat(state().remarks().breakSince()).isEmpty();
        assertThat(rig.journal.events(SessionEvent.Remarked.class))
                .extracting(event -> event.remark().getClass().getSimpleName())
                .containsExactly("BreakBegan", "BreakOver");
    }

    @Test
    void simultaneousUndosInTwoTabsUndoOneDecision() {
        for (String choice : List.of("FIX_IN_EDIT", "RECORD_AGAIN")) {
            actions.act("{\"do\":\"decide\",\"line\":2,\"choice\":\"" + choice + "\",\"by\":\"anna\"}", told);
        }
        rig.pass(0.5);
        both("{\"do\":\"undo\",\"act\":2,\"by\":\"anna\"}");
        assertThat(state().lines().notes(2).decision().map(Decision::choice)).contains(Decision.Choice.FIX_IN_EDIT);
        assertThat(told.all.subList(2, 5))
                .containsExactlyInAnyOrder(
                        "done", "refused: there is nothing to undo", "refused: there is nothing to undo");
    }

    @Test
    void anUndoNeverTakesBackWhatSomeoneElseDid() {
        ask("{\"do\":\"mark\",\"line\":1,\"by\":\"anna\"}");
        ask("{\"do\":\"mark\",\"line\":1,\"by\":\"bert\"}");
        ask("{\"do\":\"undo\",\"act\":2,\"by\":\"anna\"}");
        ask("{\"do\":\"undo\",\"by\":\"anna\"}");
        ask("{\"do\":\"undo\",\"by\":\"anna\"}");
        assertThat(told.all)
                .containsExactly(
                        "done",
                        "done",
                        "refused: someone else did this, and only they can undo it",
                        "done",
                        "refused: there is nothing to undo");
        assertThat(state().lines().notes(1).marked()).as("by the other").isTrue();
        ask("{\"do\":\"undo\",\"by\":\"bert\"}");
        assertThat(state().lines().notes(1).marked()).isFalse();
        assertThat(state().remarks().notes()).isEmpty();
    }

    @Test
    void aNoteThatSomeoneElseChangedIsNotUndone() {
        ask("{\"do\":\"note\",\"line\":1,\"text\":\"shadow\",\"by\":\"anna\"}");
        ask("{\"do\":\"edit\",\"note\":1,\"text\":\"shadow, left\",\"by\":\"bert\"}");
        ask("{\"do\":\"undo\",\"by\":\"anna\"}");
        ask("{\"do\":\"undo\",\"by\":\"bert\"}");
        ask("{\"do\":\"edit\",\"note\":7,\"text\":\"light\",\"by\":\"bert\"}");
        assertThat(told.all.subList(2, 5))
                .containsExactly(
                        "refused: someone else has changed this note since; edit it instead",
                        "done",
                        "refused: this note is gone, or can't be changed");
        assertThat(state().remarks().notes()).extracting(Note::text).containsExactly("shadow");
    }

    @Test
    void isAnsweredOnlyWhenTheJournalHasIt() {
        actions.act("{\"do\":\"say\",\"text\":\"slower\"}", told);
        assertThat(told.all).isEmpty();
        rig.pass(0.1);
        assertThat(told.all).containsExactly("done");
        assertThat(rig.journal.events(SessionEvent.Remarked.class)).hasSize(1);
        rig.journal.room(0);
        actions.act("{\"do\":\"say\",\"text\":\"quicker\"}", told);
        rig.pass(0.1);
        assertThat(told.all).hasSize(2).last().asString().startsWith("failed: Done, but not saved: ");
        assertThat(state().remarks().message().orElseThrow().text()).isEqualTo("quicker");
        rig.journal.room(1000);
        actions.act("{\"do\":\"hold\"}", told);
        rig.pass(0.1);
        assertThat(told.all).hasSize(3).last().isEqualTo("done");
    }

    @Test
    void aCutIsAnsweredWhenTheEndOfTheTakeIsInTheJournal() {
        actions.act("{\"do\":\"cut\"}", told);
        // The session has taken it in, and the capture has not ended yet.
        rig.runner().step();
        assertThat(told.all).isEmpty();
        rig.pass(0.5);
        assertThat(rig.journal.events(SessionEvent.TakeEnded.class)).hasSize(1);
        assertThat(told.all).containsExactly("done");
    }

    @Test
    void pendingRequestsAreRefusedWhenTheSessionEnds() {
        actions.act("{\"do\":\"mark\"}", told);
        rig.runner().stop();
        actions.act("{\"do\":\"mark\"}", told);
        assertThat(told.all).hasSize(2).containsOnly("failed: The session has ended. This was not done.");
        assertThat(rig.journal.events(SessionEvent.Remarked.class)).isEmpty();
    }

    @Test
    void pendingRequestsAreToldOfAFaultThatEndsTheSession() {
        reading.ask(
                state -> {
                    throw new IllegalStateException("a fault of the program");
                },
                told);
        actions.act("{\"do\":\"mark\"}", told);
        rig.pass(0.1);
        actions.act("{\"do\":\"mark\"}", told);
        assertThat(told.all)
                .hasSize(3)
                .containsOnly("failed: A fault of the program ended the session. This was not done.");
        assertThat(rig.failures).hasSize(1);
    }

    @Test
    void requestsAreCarriedOutUntilTheSessionHasEndedAndNotAfter() {
        reading.tell(new TakeCommand.Quit());
        actions.act("{\"do\":\"mark\"}", told);
        rig.pass(1);
        actions.act("{\"do\":\"mark\"}", told);
        assertThat(told.all).containsExactly("done", "failed: The session has ended. This was not done.");
        reading.tell(new TakeCommand.GoTo(new ReadingPosition(2, 1), Mover.HAND));
        assertThat(rig.journal.events(SessionEvent.Remarked.class))
                .extracting(SessionEvent.Remarked::remark)
                .hasOnlyElementsOfType(Remark.Signed.class)
                .hasSize(1);
    }

    /** A running session as the desk sees it. */
    private record Desk(Reading reading) implements DeskSession {
        @Override
        public String name() {
            return "shared";
        }

        @Override
        public SessionState state() {
            return reading.state().get();
        }

        @Override
        public void ask(Request request, Request.Reply reply) {
            reading.ask(request, reply);
        }

        @Override
        public boolean live() {
            return true;
        }

        @Override
        public Path recording(int take) {
            throw new UnsupportedOperationException("nobody listens");
        }

        @Override
        public Path films() {
            throw new UnsupportedOperationException("nobody watches");
        }

        @Override
        public DeskHandOff handOff() {
            throw new UnsupportedOperationException("nobody hands off");
        }

        @Override
        public void writePickups(OutputStream out) {
            throw new UnsupportedOperationException("nobody prints");
        }
    }
}
