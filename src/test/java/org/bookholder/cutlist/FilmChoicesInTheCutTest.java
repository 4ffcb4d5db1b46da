package org.bookholder.cutlist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Attempt;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Decision;
import org.bookholder.session.FilmChange;
import org.bookholder.session.FilmChoices;
import org.bookholder.session.FilmChoices.Edge;
import org.bookholder.session.FilmChoices.Framing;
import org.bookholder.session.LineNotes;
import org.bookholder.session.Remark;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/** What people decide about the film is honoured by the cut, from which film, hand-off and captions are made. */
final class FilmChoicesInTheCutTest {
    private static final CutRules RULES = new CutRules(s(0.1), s(0.1), s(2), false);

    /** Lines 1 to 3 in one go with a second of quiet between; line 4 after a rest of three, tried twice. */
    private static SessionState decided(Remark... remarks) {
        List<SessionEvent> events = new ArrayList<>(List.of(
                rolled(1, 0),
                cut(1, 30),
                new SessionEvent.TakeSettled(
                        s(30),
                        1,
                        List.of(
                                complete(1, 1, 1, 3, 1, 3),
                                complete(1, 2, 2, 3, 4, 6),
                                complete(1, 3, 3, 3, 7, 9),
                                complete(1, 4, 4, 3, 12, 14),
                                complete(1, 5, 4, 3, 15, 17)),
                        List.of())));
        for (Remark remark : remarks) {
            events.add(new SessionEvent.Remarked(s(30), new Remark.Signed("me", remark)));
        }
        return Session.apply(
                Session.begin(
                        Scripts.of("One comes first.", "Two comes next.", "Three comes then.", "Four comes last."),
                        FatigueLimits.defaults()),
                events);
    }

    private static List<String> cutOf(Remark... remarks) throws ProblemException {
        return CutPlanner.plan(decided(remarks), RULES, TakeSound.NONE).items().stream()
                .map(item -> item.clip()
                        .map(c -> String.format(
                                Locale.ROOT,
                                "%s %.2f-%.2f",
                                c.lines(),
                                c.in().seconds(),
                                c.out().seconds()))
                        .orElse(item.lines() + " gap"))
                .toList();
    }

    private static Remark filmed(int line, FilmChange change) {
        return new Remark.Filmed(line, change);
    }

    @Test
    void withoutDecisionsItIsAsRead() throws ProblemException {
        assertThat(cutOf()).containsExactly("1-3 0.90-9.10", "4 14.90-17.10");
    }

    @Test
    void aLineLeftOutLeavesNeitherClipNorGapNorPickup() throws ProblemException {
        Remark out = new Remark.Decided(2, Decision.Choice.LEAVE_OUT, 0, 0);
        assertThat(cutOf(out)).containsExactly("1 0.90-3.10", "3 6.90-9.10", "4 14.90-17.10");
        SessionState state = decided(new Remark.Noted(2, "a dog", true), out);
        assertThat(state.lines().pickups()).isEmpty();
        assertThat(state.lines().notes(2).leftOut()).isTrue();
        assertThat(CutPlanner.chosen(state.lines().notes(2), RULES)).isEmpty();
    }

    @Test
    void whereTheBestAttemptIsNotSeenOneAsGoodIsUsedUnlessSomebodyDecided() throws ProblemException {
        SessionState read = decided();
        assertThat(CutPlanner.plan(read, RULES, TakeSound.NONE, line -> true, a -> a.ordinal() == 5)
                        .clips())
                .last()
                .satisfies(clip ->
                        assertThat(clip.attempts()).extracting(Attempt::ordinal).containsExactly(4));
        LineNotes fourth = read.lines().notes(4);
        assertThat(CutPlanner.chosen(fourth, RULES, a -> true)).isEqualTo(fourth.best());
        LineNotes kept = decided(new Remark.Decided(4, Decision.Choice.KEEP, 1, 5))
                .lines()
                .notes(4);
        assertThat(CutPlanner.chosen(kept, RULES, a -> a.ordinal() == 5)).isEqualTo(kept.best());
    }

    /** Somebody marked the line after the fourth attempt: that one is what they did not want. */
    @Test
    void anAttemptBeforeAMarkDoesNotComeBack() {
        SessionState marked = Session.apply(
                Session.begin(Scripts.of("One comes first."), FatigueLimits.defaults()),
                List.of(
                        rolled(1, 0),
                        new SessionEvent.TakeSettled(s(3), 1, List.of(complete(1, 1, 1, 3, 1, 3)), List.of()),
                        new SessionEvent.Remarked(s(5), new Remark.Signed("me", new Remark.Noted(1, "a dog", true))),
                        new SessionEvent.TakeSettled(s(9), 1, List.of(complete(1, 2, 1, 3, 6, 8)), List.of()),
                        cut(1, 10)));
        LineNotes line = marked.lines().notes(1);
        assertThat(line.best()).map(Attempt::ordinal).contains(2);
        assertThat(CutPlanner.chosen(line, RULES, a -> a.ordinal() == 2)).isEqualTo(line.best());
    }

    @Test
    void anotherAttemptIsUsed() throws ProblemException {
        assertThat(cutOf(new Remark.Decided(4, Decision.Choice.KEEP, 1, 4)))
                .containsExactly("1-3 0.90-9.10", "4 11.90-14.10");
    }

    /** Six tenths of a pause belong to the line after it. */
    @Test
    void aShorterPauseIsCutOutOfTheQuietAndALongerOneIsAsLongAsItWasRead() throws ProblemException {
        assertThat(cutOf(filmed(2, new FilmChange.Paused(500))))
                .containsExactly("1 0.90-3.20", "2-3 3.70-9.10", "4 14.90-17.10");
        assertThat(cutOf(filmed(2, new FilmChange.Paused(1500)))).containsExactly("1-3 0.90-9.10", "4 14.90-17.10");
        assertThat(cutOf(filmed(4, new FilmChange.Paused(1000))))
                .as("the quiet before the attempt that is used is one second, less what is not sure")
                .containsExactly("1-3 0.90-9.40", "4 14.40-17.10");
        assertThat(cutOf(filmed(4, new FilmChange.Paused(2500)))).containsExactly("1-3 0.90-10.60", "4 14.10-17.10");
    }

    @Test
    void aFramingAloneTakesNothingOfThePauseAway() throws ProblemException {
        CutList cut = CutPlanner.plan(decided(filmed(3, new FilmChange.Framed(Framing.CLOSER))), RULES, TakeSound.NONE);
        assertThat(cut.clips()).hasSize(3);
        assertThat(cut.clips().get(0).out()).isEqualTo(cut.clips().get(1).in());
        assertThat(cut.clips().get(1).framing()).isEqualTo(Framing.CLOSER);
        assertThat(cut.clips().get(2).framing()).isEqualTo(Framing.PLANNED);
    }

    @Test
    void anotherCameraMakesAJoinBeforeItsLine() throws ProblemException {
        CutList cut = CutPlanner.plan(decided(filmed(3, new FilmChange.SeenBy("B.MP4"))), RULES, TakeSound.NONE);
        assertThat(cut.clips()).hasSize(3);
        assertThat(cut.clips().get(0).out()).isEqualTo(cut.clips().get(1).in());
        assertThat(cut.clips().get(1).camera()).contains("B.MP4");
        assertThat(cut.clips().get(2).camera()).isEmpty();
    }

    @Test
    void thePointOfACameraIsKeptForTheSessionAndNotForALine() {
        FilmChange.KeptPoint point = new FilmChange.KeptPoint("A.MP4", new FilmChoices.Point(400, 300));
        SessionState state = decided(filmed(0, point));
        assertThat(state.remarks().film(0).points()).containsEntry("A.MP4", new FilmChoices.Point(400, 300));
        assertThat(decided(filmed(2, point)).remarks().film(2)).isEqualTo(FilmChoices.NONE);
        assertThat(decided(filmed(0, new FilmChange.Paused(100))).remarks().film(0))
                .isEqualTo(FilmChoices.NONE);
        assertThat(decided(filmed(0, point), new Remark.Undone()).remarks().film(0))
                .isEqualTo(FilmChoices.NONE);
    }

    @Test
    void itIsCutWhereSomeoneSaysToTheSampleAsLongAsThatAttemptIsUsed() throws ProblemException {
        Remark in = filmed(2, new FilmChange.CutAt(1, 2, Edge.IN, s(3.95)));
        Remark out = filmed(4, new FilmChange.CutAt(1, 5, Edge.OUT, s(17.5)));
        assertThat(cutOf(in, out)).containsExactly("1 0.90-3.40", "2-3 3.95-9.10", "4 14.90-17.50");
        assertThat(cutOf(in, out, new Remark.Decided(4, Decision.Choice.KEEP, 1, 4)))
                .containsExactly("1 0.90-3.40", "2-3 3.95-9.10", "4 11.90-14.10");
    }

    @Test
    void somethingOfALineStaysWhereverItsEndsAreSet() throws ProblemException {
        assertThat(cutOf(filmed(4, new FilmChange.CutAt(1, 5, Edge.IN, s(17.05)))))
                .containsExactly("1-3 0.90-9.10", "4 16.95-17.10");
        assertThat(cutOf(filmed(4, new FilmChange.CutAt(1, 5, Edge.OUT, s(14.5)))))
                .containsExactly("1-3 0.90-9.10", "4 14.90-15.05");
    }

    @Test
    void nothingIsHeardTwiceWhereALineIsMadeToBeginSooner() throws ProblemException {
        assertThat(cutOf(filmed(2, new FilmChange.CutAt(1, 2, Edge.IN, s(3.15)))))
                .startsWith("1 0.90-3.15", "2-3 3.15-9.10");
        assertThat(cutOf(filmed(1, new FilmChange.CutAt(1, 1, Edge.OUT, s(3.8)))))
                .startsWith("1 0.90-3.80", "2-3 3.80-9.10");
    }

    @Test
    void eachDecisionIsTakenBackOnItsOwn() throws ProblemException {
        Remark pause = filmed(2, new FilmChange.Paused(500));
        Remark framed = filmed(2, new FilmChange.Framed(Framing.CLOSER));
        Remark out = new Remark.Decided(3, Decision.Choice.LEAVE_OUT, 0, 0);
        SessionState all = decided(pause, framed, out);
        assertThat(all.remarks().acts().last("me").orElseThrow().number()).isEqualTo(3);
        assertThat(cutOf(pause, framed, out, new Remark.Retracted(1), new Remark.Retracted(3)))
                .isEqualTo(cutOf(framed));
        assertThat(cutOf(pause, framed, new Remark.Retracted(2))).isEqualTo(cutOf(pause));
    }

    @Test
    void decisionsMoveWithTheirLineWhenTheScriptChanges() {
        SessionState before = decided(filmed(3, new FilmChange.Paused(300)), filmed(2, new FilmChange.Paused(200)));
        SessionState after = Session.apply(
                before,
                new SessionEvent.TextChanged(s(30), "One comes first.\n\nThree comes then.\n\nFour comes last.\n"));
        assertThat(after.remarks().film(2).pause()).isEqualTo(300);
        assertThat(after.remarks().film(3).pause()).isNegative();
    }
}
