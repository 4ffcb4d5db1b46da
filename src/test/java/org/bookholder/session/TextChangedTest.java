package org.bookholder.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.bookholder.testing.Readings.broken;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.moved;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.settled;
import static org.bookholder.testing.Readings.swapped;

import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;

/** A script whose text is changed in the middle of a session. */
final class TextChangedTest {
    private static final String BEFORE = """
        Every wheel begins with its hub.
        Count the spokes twice.
        Then lace the first side.

        Turn it, and tell me what you hear.
        """;

    @Test
    void unchangedLinesKeepTheirNotesUnderTheirNewNumbers() throws ProblemException {
        SessionState state = change("""
            Take the wheel out first.
            Every wheel begins with its hub.
            Count the spokes three times.
            Then lace the first side!

            Turn it, and tell me what you hear.
            """);
        assertThat(state.lines().all()).extracting(LineNotes::line).containsExactly(1, 2, 3, 4, 5);
        assertThat(state.lines().all())
                .extracting(LineNotes::outcome)
                .containsExactly(Outcome.SKIPPED, Outcome.CLEAN, Outcome.SKIPPED, Outcome.MISREAD, Outcome.SKIPPED);
        assertThat(state.lines().notes(4).attempts()).extracting(Attempt::line).containsExactly(4, 4);
        assertThat(state.lines().notes(4).marks()).containsExactly("a door");
        assertThat(state.remarks().notes()).extracting(Note::line).containsExactly(4, 3);
        assertThat(state.lines().notes(2).decision()).map(Decision::choice).contains(Decision.Choice.FIX_IN_EDIT);
        assertThat(state.remarks().acts().standing()).extracting(Act::number).containsExactly(2);
        // What stands anew before the place that was read is to be picked up; what is yet to come is not.
        assertThat(state.lines().pickups()).extracting(LineNotes::line).containsExactly(1, 3, 4);
    }

    @Test
    void thePlaceIsKept() throws ProblemException {
        assertThat(change("A new one.\n" + BEFORE).following().position()).isEqualTo(new ReadingPosition(5, 3));
        assertThat(change(BEFORE.replace("Turn it, and tell me what you hear.", "Listen. Then turn it."))
                        .following()
                        .position())
                .isEqualTo(new ReadingPosition(4, 1));
        assertThat(change("Every wheel begins with its hub.\n").following().position())
                .isEqualTo(new ReadingPosition(2, 1));
    }

    @Test
    void countsAreOfTheNewText() throws ProblemException {
        assertThat(change("Two words.\n" + BEFORE).wordsTotal())
                .isEqualTo(reading().wordsTotal() + 2);
    }

    @Test
    void attemptsSettledAgainLaterReplaceTheEarlierOnes() throws ProblemException {
        SessionState state = change("A new one.\n" + BEFORE);
        SessionState settled = Session.apply(
                state, new SessionEvent.TakeSettled(s(30), 1, List.of(complete(1, 1, 2, 6, 2, 5)), List.of()));
        assertThat(settled.lines().notes(2).attempts()).hasSize(1);
        assertThat(settled.lines().notes(4).attempts()).isEmpty();
    }

    @Test
    void anInvalidTextCannotBecomeAnEvent() {
        assertThatThrownBy(() -> change("---\npace: fast\n---\nHello.\n"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("pace");
    }

    /** Older journals say only that the last decision was taken back, not which. */
    @Test
    void anOlderUndoTakesBackTheDecisionThatWasTheLastOne() throws ProblemException {
        SessionState decided = remarked(reading(), new Remark.Decided(3, Decision.Choice.NOT_A_FAULT, 1, 3));
        SessionState moved =
                Session.apply(decided, new SessionEvent.TextChanged(s(20), "Take the wheel out first.\n" + BEFORE));
        assertThat(moved.lines().notes(4).decision()).isPresent();
        SessionState undone = remarked(moved, new Remark.Undone());
        assertThat(undone.lines().notes(4).decision()).isEmpty();
        assertThat(undone.lines().notes(2).decision()).isPresent();
    }

    /** It was about a line that is gone since: a decision about another line must not go in its place. */
    @Test
    void anOlderUndoOfADecisionWhoseLineIsGoneLeavesTheOthers() throws ProblemException {
        SessionState decided = remarked(reading(), new Remark.Decided(3, Decision.Choice.NOT_A_FAULT, 1, 3));
        SessionState gone = Session.apply(
                decided,
                new SessionEvent.TextChanged(s(20), BEFORE.replace("Then lace the first side.", "Lace one side.")));
        assertThat(gone.remarks().readRight()).as("what is right in every line").hasSize(1);
        SessionState undone = remarked(gone, new Remark.Undone());
        assertThat(undone.remarks().readRight()).isEmpty();
        assertThat(undone.lines().notes(1).decision()).map(Decision::choice).contains(Decision.Choice.FIX_IN_EDIT);
        assertThat(remarked(undone, new Remark.Undone()).lines().notes(1).decision())
                .isEmpty();
    }

    private static SessionState remarked(SessionState state, Remark remark) {
        return Session.apply(state, new SessionEvent.Remarked(s(21), remark));
    }

    @Test
    void linesAreFoundAgainWhereverTheyWent() throws ProblemException {
        Renumbering lines = Renumbering.between(script("One.\nTwo.\nThree.\nFour.\n"), script("Zero.\nTwo.\nFour.\n"));
        assertThat(lines.kept()).isEqualTo(2);
        assertThat(List.of(lines.line(1), lines.line(2), lines.line(3), lines.line(4), lines.line(5)))
                .containsExactly(0, 2, 0, 3, 0);
        assertThat(lines.position(new ReadingPosition(3, 1))).isEqualTo(new ReadingPosition(3, 1));
        assertThat(lines.position(new ReadingPosition(5, 1))).isEqualTo(new ReadingPosition(4, 1));
    }

    private static SessionState change(String text) throws ProblemException {
        return Session.apply(reading(), new SessionEvent.TextChanged(s(20), text));
    }

    /** Three lines read, the second left out, the fourth begun. */
    private static SessionState reading() throws ProblemException {
        return Session.apply(
                Session.begin(script(BEFORE), FatigueLimits.defaults()),
                List.of(
                        rolled(1, 0),
                        settled(complete(1, 1, 1, 6, 2, 5)),
                        settled(broken(1, 2, 3, 2, 6, 7)),
                        settled(complete(1, 3, 3, 5, 8, 11, swapped(2, "lace", "face"))),
                        new SessionEvent.PickupMarked(s(12), 3, "a door"),
                        new SessionEvent.Remarked(s(12), new Remark.Noted(2, "too long", false)),
                        new SessionEvent.Remarked(s(12), new Remark.Decided(1, Decision.Choice.FIX_IN_EDIT, 1, 1)),
                        moved(13, 4, 3, 2)));
    }

    private static Script script(String text) throws ProblemException {
        return ScriptReader.parse(text, "lesson.md", Format.MARKDOWN);
    }
}
