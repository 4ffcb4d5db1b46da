package org.bookholder.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.s;

import java.nio.file.Path;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.session.Decision.Choice;
import org.bookholder.session.Mover;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.PickupRound;
import org.bookholder.session.Remark;
import org.bookholder.session.RoundCommand;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeCommand;
import org.bookholder.session.TakeEnd;
import org.bookholder.testing.FakeClock;
import org.bookholder.testing.Readings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class ActionsTest {
    private final ExampleDesk session = new ExampleDesk(Path.of("nowhere"));
    private final FakeClock clock = new FakeClock();
    private final Actions actions = new Actions(session, clock);

    @Test
    void aMarkTakesTheLineThatWasJustRead() {
        session.happens(Readings.moved(7, 3, 1, 1));
        assertThat(act("{\"do\":\"mark\"}")).isEqualTo("done");
        session.happens(Readings.moved(8, 3, 2, 1));
        assertThat(act("{\"do\":\"note\",\"text\":\" a\\n shadow \"}")).isEqualTo("done");
        assertThat(session.told)
                .containsExactly(signed(new Remark.Noted(2, "", true)), signed(new Remark.Noted(3, "a shadow", false)));
    }

    /** The next lesson comes to the same address, and has lines of the same numbers. */
    @Test
    void anActForAnotherLessonIsRefused() {
        assertThat(act("{\"do\":\"mark\",\"line\":2,\"session\":\"the one before\"}"))
                .isEqualTo("refused: that lesson is over");
        assertThat(act("{\"do\":\"next_lesson\",\"session\":\"the one before\"}"))
                .isEqualTo("refused: that lesson is over");
        assertThat(session.told).isEmpty();
        assertThat(act("{\"do\":\"mark\",\"line\":2,\"session\":\"" + session.name() + "\"}"))
                .isEqualTo("done");
    }

    /** A page that got no answer sends its act again, to the next start of the program too: what was recorded says that it was done. */
    @Test
    void anActThatIsSentAgainUnderItsNameIsDoneOnce() {
        Remark mark = new Remark.Signed("ann", new Remark.Noted(2, "", true), "x1");
        assertThat(act("{\"do\":\"mark\",\"line\":2,\"by\":\"ann\",\"once\":\"x1\"}"))
                .isEqualTo("done");
        assertThat(session.told).containsExactly(new NoteCommand.Add(mark));

        session.happens(new SessionEvent.Remarked(s(7), mark));
        session.happens(new SessionEvent.Remarked(s(8), new Remark.Signed("ann", new Remark.Retracted(1))));
        assertThat(act("{\"do\":\"mark\",\"line\":2,\"by\":\"ann\",\"once\":\"x1\"}"))
                .isEqualTo("done");
        assertThat(session.told).hasSize(1);

        assertThat(act("{\"do\":\"mark\",\"line\":2,\"by\":\"ann\",\"once\":\"x2\"}"))
                .isEqualTo("done");
        assertThat(session.told).hasSize(2);
        assertThat(act("{\"do\":\"mark\",\"line\":2,\"once\":\"X 1\"}"))
                .isEqualTo("refused: no act can be called that");
    }

    @Test
    void anUndoIsOfTheLastActOnly() {
        for (int line : new int[] {1, 2}) {
            session.happens(
                    new SessionEvent.Remarked(s(7), new Remark.Signed("ann", new Remark.Noted(line, "", true))));
        }
        assertThat(act("{\"do\":\"undo\",\"act\":1,\"by\":\"ann\"}"))
                .isEqualTo("refused: you have done something else since");
        assertThat(act("{\"do\":\"undo\",\"act\":2,\"by\":\"ann\"}")).isEqualTo("done");
    }

    @Test
    void aTakeIsRunAndABreakIsTaken() {
        assertThat(act("{\"do\":\"hold\"}")).isEqualTo("done");
        session.happens(new SessionEvent.Held(s(7)));
        for (String what : new String[] {"go_on", "cut", "break"}) {
            assertThat(act("{\"do\":\"" + what + "\"}")).isEqualTo("done");
        }
        session.happens(new SessionEvent.Remarked(s(7), new Remark.BreakBegan(clock.instant())));
        assertThat(act("{\"do\":\"back\"}")).isEqualTo("done");
        assertThat(act("{\"do\":\"go_to\",\"line\":3}")).isEqualTo("done");
        assertThat(act("{\"do\":\"next_take\",\"take\":1}")).isEqualTo("done");
        assertThat(session.told)
                .containsExactly(
                        new TakeCommand.Hold(),
                        new TakeCommand.Resume(),
                        new TakeCommand.Cut(),
                        new TakeCommand.Cut(),
                        new NoteCommand.Add(new Remark.BreakBegan(clock.instant())),
                        new NoteCommand.Add(new Remark.BreakOver(clock.instant())),
                        new TakeCommand.GoTo(new ReadingPosition(3, 1), Mover.HAND),
                        new TakeCommand.NextTake(new ReadingPosition(1, 1)));
    }

    @Test
    void thePickupRoundIsBegunSteeredAndEnded() {
        assertThat(act("{\"do\":\"leave\",\"line\":2}")).isEqualTo("done");
        session.happens(new SessionEvent.PickupMarked(s(7), 2, ""));
        assertThat(act("{\"do\":\"round\"}")).isEqualTo("done");
        session.happens(new SessionEvent.RoundMoved(s(7), PickupRound.NONE.at(2, 0)));
        for (String what : new String[] {"leave", "again"}) {
            assertThat(act("{\"do\":\"" + what + "\",\"line\":2}")).isEqualTo("done");
        }
        // Someone else has gone on already.
        assertThat(act("{\"do\":\"leave\",\"line\":1}")).isEqualTo("done");
        assertThat(act("{\"do\":\"round_end\"}")).isEqualTo("done");
        assertThat(session.told)
                .containsExactly(
                        new RoundCommand.Begin(),
                        new RoundCommand.Leave(),
                        new RoundCommand.Again(),
                        new RoundCommand.End());
    }

    @Test
    void aCountThatWaitsIsBegunByGoingOn() {
        session.happens(new SessionEvent.Held(s(7)));
        session.happens(new SessionEvent.CountInStepped(s(7), 0));
        assertThat(act("{\"do\":\"go_on\"}")).isEqualTo("done");
        assertThat(session.told).containsExactly(new TakeCommand.BeginCount());
    }

    @Test
    void actionsWithoutEffectMakeNoCommands() {
        for (String what : new String[] {"go_on", "back"}) {
            assertThat(act("{\"do\":\"" + what + "\"}")).isEqualTo("done");
        }
        session.happens(new SessionEvent.Held(s(7)));
        assertThat(act("{\"do\":\"hold\"}")).isEqualTo("done");
        assertThat(session.told).isEmpty();
    }

    @Test
    void impossibleActionsAreRefusedWithAReason() {
        session.happens(new SessionEvent.TakeEnded(s(8), 1, clock.instant(), TakeEnd.CUT));
        assertThat(act("{\"do\":\"hold\"}")).isEqualTo("refused: no take is rolling");
        assertThat(act("{\"do\":\"go_on\"}")).isEqualTo("refused: no take is rolling");
        assertThat(act("{\"do\":\"undo\"}")).isEqualTo("refused: there is nothing to undo");
        assertThat(act("{\"do\":\"cut\"}")).isEqualTo("done");
        assertThat(session.told).isEmpty();
    }

    @Test
    void aSessionThatHasEndedSaysSo() {
        session.fails = "The session has ended. This was not done.";
        assertThat(act("{\"do\":\"mark\"}")).isEqualTo("failed: The session has ended. This was not done.");
    }

    private static NoteCommand signed(Remark remark) {
        return new NoteCommand.Add(new Remark.Signed("", remark));
    }

    /** What became of it. */
    private String act(String json) {
        Told told = new Told();
        try {
            actions.act(json, told);
        } catch (IllegalArgumentException e) {
            told.refused(String.valueOf(e.getMessage()));
        }
        assertThat(told.all).hasSize(1);
        return told.all.get(0);
    }

    @Test
    void aDecisionIsAboutAnAttempt() {
        assertThat(act("{\"do\":\"decide\",\"line\":2,\"choice\":\"KEEP\",\"take\":1,\"ordinal\":2}"))
                .isEqualTo("done");
        assertThat(session.told).containsExactly(signed(new Remark.Decided(2, Choice.KEEP, 1, 2)));
        assertThat(act("{\"do\":\"decide\",\"line\":2,\"choice\":\"KEEP\",\"take\":1,\"ordinal\":9}"))
                .isEqualTo("refused: there is no such attempt");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "[",
                "[]",
                "{\"do\":\"applaud\"}",
                "{\"do\":\"mark\",\"by\":\"presenter\"}",
                "{\"do\":\"mark\",\"by\":\"<b>\"}",
                "{\"do\":\"go_to\",\"line\":0}",
                "{\"do\":\"go_to\",\"line\":4}",
                "{\"do\":\"decide\",\"line\":1,\"choice\":\"BURN\"}",
                "{\"do\":\"bound\",\"take\":7,\"ordinal\":1,\"start\":1,\"end\":2}",
                "{\"do\":\"bound\",\"take\":1,\"ordinal\":1,\"start\":2,\"end\":1}",
                "{\"do\":\"bound\",\"take\":1,\"ordinal\":1,\"start\":\"NaN\",\"end\":1e999}"
            })
    void invalidActionsAreRefusedAndChangeNothing(String asked) {
        assertThat(act(asked)).startsWith("refused: ");
        assertThat(session.told).isEmpty();
    }

    @Test
    void aTextHasALimit() {
        String text = "x".repeat(Actions.LONGEST_TEXT + 1);
        assertThat(act("{\"do\":\"say\",\"text\":\"" + text + "\"}")).contains("longer than 500 characters");
    }
}
