package org.bookholder.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.broken;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.dropped;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.settled;
import static org.bookholder.testing.Readings.swapped;

import java.time.Duration;
import java.util.List;
import org.bookholder.cutlist.CutPlanner;
import org.bookholder.cutlist.CutRules;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.Outcome;
import org.bookholder.session.Decision.Choice;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class RemarksTest {
    /** Line 1 clean; line 2 misread twice; line 3 broken off; line 4 with the same swap as line 2. */
    private static SessionState heard() {
        return Session.apply(
                Session.begin(
                        Scripts.of(
                                "Spring comes early.",
                                "Buy a dozen frames.",
                                "Turn them to the sun.",
                                "Frames dry out."),
                        FatigueLimits.defaults()),
                List.of(
                        rolled(1, 0),
                        settled(complete(1, 1, 1, 3, 1, 2)),
                        settled(complete(1, 2, 2, 4, 3, 5, swapped(4, "frames", "flames"))),
                        settled(complete(1, 3, 2, 4, 6, 8, dropped(2, "a"), swapped(4, "frames", "flames"))),
                        settled(broken(1, 4, 3, 2, 9, 10)),
                        settled(complete(1, 5, 4, 3, 11, 13, swapped(1, "Frames", "Flames")))));
    }

    private static SessionState with(SessionState state, Remark... remarks) {
        SessionState next = state;
        for (Remark remark : remarks) {
            next = Session.apply(next, new SessionEvent.Remarked(s(20), remark));
        }
        return next;
    }

    private static LineNotes line(SessionState state, int number) {
        return state.lines().notes(number);
    }

    private static List<Integer> pickups(SessionState state) {
        return state.lines().pickups().stream().map(LineNotes::line).toList();
    }

    /** A page may send an act again after it was taken back, or after the text was changed. */
    @Test
    void whatAnActWasCalledIsRemembered() {
        SessionState marked = with(heard(), new Remark.Signed("ann", new Remark.Noted(4, "", true), "x1"));
        SessionState undone = with(marked, new Remark.Signed("ann", new Remark.Retracted(1), "x2"));
        SessionState shorter = Session.apply(undone, new SessionEvent.TextChanged(s(30), "Spring comes early.\n"));
        assertThat(shorter.remarks().notes()).isEmpty();
        assertThat(shorter.remarks().acts().names()).containsExactlyInAnyOrder("x1", "x2");
        assertThat(shorter.remarks().acts().done("x1")).isTrue();
        assertThat(shorter.remarks().acts().done("")).isFalse();
    }

    @Test
    void aKeptAttemptIsTheBestOneAndIsUsedInTheCut() {
        SessionState kept = with(heard(), new Remark.Decided(2, Choice.KEEP, 1, 2));
        assertThat(pickups(heard())).containsExactly(2, 3, 4);
        assertThat(pickups(kept)).containsExactly(3, 4);
        assertThat(line(kept, 2).best()).map(Attempt::ordinal).contains(2);
        assertThat(line(kept, 2).outcome()).isEqualTo(Outcome.MISREAD);
        assertThat(CutPlanner.chosen(line(heard(), 2), CutRules.defaults())).isEmpty();
        assertThat(CutPlanner.chosen(line(kept, 2), CutRules.defaults()))
                .map(Attempt::ordinal)
                .contains(2);
    }

    @Test
    void aLineThatIsNotAFaultIsCleanAndTheSameSwapIsNotReportedAgain() {
        SessionState right = with(heard(), new Remark.Decided(2, Choice.NOT_A_FAULT, 1, 3));
        assertThat(line(right, 2).outcome()).isEqualTo(Outcome.CLEAN);
        assertThat(line(right, 4).outcome()).as("the same swap in another line").isEqualTo(Outcome.CLEAN);
        assertThat(pickups(right)).containsExactly(3);
        assertThat(right.remarks().readRight()).hasSize(2);
    }

    /** What is heard may be spelt in another way; what sounds different is another word. */
    @Test
    void aSwapThatSoundsTheSameIsNotReportedEither() {
        SessionState known = with(heard(), new Remark.Carried(List.of(AcceptedReading.heardAs("frames", "rays"))));
        SessionState later = Session.apply(
                known,
                List.of(
                        rolled(2, 30),
                        settled(complete(2, 1, 1, 3, 31, 32, swapped(1, "Frames", "raise"))),
                        settled(complete(2, 2, 1, 3, 33, 34, swapped(1, "Frames", "ray"))),
                        settled(complete(2, 3, 1, 3, 35, 36, swapped(1, "Flames", "rays")))));
        assertThat(line(later, 1).attempts())
                .extracting(Attempt::outcome)
                .containsExactly(Outcome.CLEAN, Outcome.CLEAN, Outcome.MISREAD, Outcome.MISREAD);
        assertThat(known.notCalled()).isEmpty();
        assertThat(later.notCalled()).containsOnlyKeys(1);
        assertThat(later.notCalled().get(1)).extracting(Deviation::said).containsExactly("raise");
    }

    /** The rules of spelling are English: what has letters that they don't know must be the same. */
    @ParameterizedTest
    @CsvSource({
        "\u043a\u043e\u043b\u0435\u0441\u043e, \u0434\u043e\u0440\u043e\u0433\u0430",
        "sch\u00f6n, schon",
        "\u00e9t\u00e9, t",
        "10, 20"
    })
    void whatTheRulesOfSpellingDontKnowSoundsLikeNothingElse(String known, String heard) {
        SessionState later = Session.apply(
                with(heard(), new Remark.Carried(List.of(AcceptedReading.heardAs("frames", known)))),
                List.of(
                        rolled(2, 30),
                        settled(complete(2, 1, 1, 3, 31, 32, swapped(1, "Frames", known))),
                        settled(complete(2, 2, 1, 3, 33, 34, swapped(1, "Frames", heard)))));
        assertThat(line(later, 1).attempts())
                .extracting(Attempt::outcome)
                .containsExactly(Outcome.CLEAN, Outcome.CLEAN, Outcome.MISREAD);
    }

    @Test
    void onlyWhatThisSessionDecidedForEveryLineIsLearntFromIt() {
        SessionState carried = with(heard(), new Remark.Carried(List.of(AcceptedReading.heardAs("hub", "hop"))));
        SessionState right = with(carried, new Remark.Signed("ann", new Remark.Decided(2, Choice.NOT_A_FAULT, 1, 3)));
        assertThat(right.remarks().heardAs()).containsExactly(AcceptedReading.heardAs("frames", "flames"));
        assertThat(with(right, new Remark.Signed("ann", new Remark.Retracted(1)))
                        .remarks()
                        .heardAs())
                .isEmpty();
    }

    @Test
    void whatIsDecidedOtherwiseAfterwardsIsNotLearnt() {
        SessionState right = with(heard(), new Remark.Signed("ann", new Remark.Decided(2, Choice.NOT_A_FAULT, 1, 3)));
        for (Choice other : List.of(Choice.RECORD_AGAIN, Choice.KEEP, Choice.FIX_IN_EDIT)) {
            SessionState revised = with(right, new Remark.Signed("ann", new Remark.Decided(2, other, 1, 3)));
            assertThat(revised.remarks().heardAs()).as("%s", other).isEmpty();
            assertThat(with(revised, new Remark.Signed("ann", new Remark.Retracted(2)))
                            .remarks()
                            .heardAs())
                    .hasSize(1);
        }
        assertThat(with(right, new Remark.Signed("ann", new Remark.Decided(1, Choice.KEEP, 1, 1)))
                        .remarks()
                        .heardAs())
                .as("another line")
                .hasSize(1);
        assertThat(with(right, new Remark.Signed("ann", new Remark.Decided(2, Choice.LEAVE_OUT, 0, 0)))
                        .remarks()
                        .heardAs())
                .hasSize(1);
    }

    @Test
    void aMissingWordIsAcceptedInItsOwnLineOnly() {
        SessionState right = with(heard(), new Remark.Decided(2, Choice.NOT_A_FAULT, 1, 3));
        SessionState later = Session.apply(
                right,
                List.of(
                        rolled(2, 30),
                        settled(complete(2, 1, 2, 4, 31, 33, dropped(2, "a"))),
                        settled(complete(2, 2, 3, 5, 34, 36, dropped(2, "a")))));
        assertThat(line(later, 2).attempts())
                .last()
                .extracting(Attempt::outcome)
                .isEqualTo(Outcome.CLEAN);
        assertThat(line(later, 3).outcome()).isEqualTo(Outcome.MISREAD);
    }

    @Test
    void readingsAcceptedEarlierApplyToThisSession() {
        SessionState right = with(heard(), new Remark.Decided(2, Choice.NOT_A_FAULT, 1, 2));
        SessionState next = with(heard(), new Remark.Carried(right.remarks().readRight()));
        assertThat(line(next, 4).outcome()).isEqualTo(Outcome.CLEAN);
        assertThat(next.remarks().acts().standing()).isEmpty();
    }

    @Test
    void aLineToRecordAgainIsAPickupUntilItWasReadClean() {
        SessionState again = with(heard(), new Remark.Decided(1, Choice.RECORD_AGAIN, 0, 0));
        assertThat(pickups(again)).startsWith(1);
        SessionState read = Session.apply(again, List.of(rolled(2, 30), settled(complete(2, 1, 1, 3, 31, 32))));
        assertThat(pickups(read)).containsExactly(2, 3, 4);
    }

    @Test
    void undoWorksStepByStep() {
        SessionState state = with(
                heard(),
                new Remark.Decided(2, Choice.KEEP, 1, 2),
                new Remark.Decided(2, Choice.NOT_A_FAULT, 1, 3),
                new Remark.Bounded(1, 1, s(0.5), s(2.5)));
        assertThat(line(state, 1).attempts()).extracting(Attempt::start).containsExactly(s(0.5));
        SessionState first = with(state, new Remark.Undone());
        assertThat(line(first, 1)).isEqualTo(line(heard(), 1));
        SessionState second = with(first, new Remark.Undone());
        assertThat(line(second, 2).decision()).map(Decision::choice).contains(Choice.KEEP);
        assertThat(line(second, 4).outcome()).isEqualTo(Outcome.MISREAD);
        SessionState third = with(second, new Remark.Undone(), new Remark.Undone());
        assertThat(third.lines().all()).isEqualTo(heard().lines().all());
    }

    private static Remark by(String author, Remark remark) {
        return new Remark.Signed(author, remark);
    }

    @Test
    void undoByOnePersonLeavesTheActsOfOthers() {
        SessionState state = with(
                heard(),
                by("anna", new Remark.Noted(1, "", true)),
                by("bert", new Remark.Noted(1, "a door", true)),
                by("anna", new Remark.Decided(2, Choice.NOT_A_FAULT, 1, 3)),
                by("bert", new Remark.Decided(2, Choice.RECORD_AGAIN, 0, 0)),
                by("anna", new Remark.Bounded(1, 1, s(0.5), s(2.5))));
        assertThat(state.remarks().acts().last("anna")).map(Act::number).contains(5);
        SessionState back = with(state, new Remark.Retracted(5), new Remark.Retracted(3), new Remark.Retracted(1));
        assertThat(back.remarks().acts().last("anna")).isEmpty();
        assertThat(line(back, 1).attempts()).isEqualTo(line(heard(), 1).attempts());
        assertThat(line(back, 1).marks()).containsExactly("a door");
        assertThat(line(back, 2).decision()).map(Decision::choice).contains(Choice.RECORD_AGAIN);
        assertThat(line(back, 4).outcome()).as("accepted by anna").isEqualTo(Outcome.MISREAD);
        SessionState none = with(back, new Remark.Retracted(2), new Remark.Retracted(4), new Remark.Retracted(4));
        assertThat(none.lines().all()).isEqualTo(heard().lines().all());
        assertThat(none.remarks().notes()).isEmpty();
    }

    @Test
    void aNoteIsRewordedAndPutBack() {
        SessionState noted = with(
                heard(), by("anna", new Remark.Noted(1, "a dor", true)), by("anna", new Remark.Edited(1, "a door")));
        assertThat(line(noted, 1).marks()).containsExactly("a door");
        assertThat(noted.remarks().notes()).extracting(Note::text).containsExactly("a door");
        SessionState before = with(noted, new Remark.Retracted(2));
        assertThat(line(before, 1).marks()).containsExactly("a dor");
        SessionState removed =
                with(heard(), by("anna", new Remark.Noted(3, "shadow", false)), by("bert", new Remark.Edited(1, "")));
        assertThat(removed.remarks().notes()).isEmpty();
        assertThat(with(removed, new Remark.Retracted(2)).remarks().notes())
                .extracting(Note::text)
                .containsExactly("shadow");
    }

    @Test
    void aMessageIsTakenBackUntilAnotherHasCome() {
        SessionState told = with(heard(), by("anna", new Remark.Told("slower")));
        assertThat(message(with(told, new Remark.Retracted(1)))).isEmpty();
        SessionState both = with(told, by("bert", new Remark.Told("louder")), new Remark.Retracted(1));
        assertThat(message(both)).isEqualTo("louder");
    }

    private static String message(SessionState state) {
        return state.remarks().message().orElseThrow().text();
    }

    @Test
    void marksAndNotesSayWhoMadeThem() {
        SessionState state = Session.apply(heard(), new SessionEvent.PickupMarked(s(15), 1, ""));
        SessionState both = with(state, new Remark.Noted(3, "shadow on the left cheek", false));
        assertThat(both.remarks().notes())
                .containsExactly(
                        new Note(0, s(15), 1, "", Person.PRESENTER, true),
                        new Note(1, s(20), 3, "shadow on the left cheek", Person.PRODUCER, false));
        SessionState own = with(heard(), by(Remark.Signed.PRESENTER, new Remark.Noted(1, "", true)));
        assertThat(own.remarks().notes()).extracting(Note::by).containsExactly(Person.PRESENTER);
        assertThat(pickups(both)).containsExactly(1, 2, 3, 4);
    }

    @Test
    void aBreakBetweenTakesCountsAsRest() {
        SessionState cut =
                Session.apply(heard(), new SessionEvent.TakeEnded(s(20), 1, MORNING.plusSeconds(20), TakeEnd.CUT));
        Remark over = new Remark.BreakOver(MORNING.plusSeconds(20 + 600));
        SessionState resting = with(cut, new Remark.BreakBegan(MORNING.plusSeconds(20)));
        assertThat(resting.remarks().breakSince()).contains(MORNING.plusSeconds(20));
        SessionState rested = with(resting, over);
        assertThat(rested.remarks().breakSince()).isEmpty();
        assertThat(cut.measures().fatigue().sinceBreak()).isPositive();
        assertThat(rested.measures().fatigue().sinceBreak()).isEqualTo(Duration.ZERO);
    }
}
