package org.bookholder.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.broken;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.evenly;
import static org.bookholder.testing.Readings.moved;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.settled;
import static org.bookholder.testing.Readings.swapped;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.Script;
import org.bookholder.session.SessionEvent.FollowChanged;
import org.bookholder.session.SessionEvent.Held;
import org.bookholder.session.SessionEvent.Opened;
import org.bookholder.session.SessionEvent.PickupMarked;
import org.bookholder.session.SessionEvent.PositionMoved;
import org.bookholder.session.SessionEvent.RecordingFailed;
import org.bookholder.session.SessionEvent.RecordingResumed;
import org.bookholder.session.SessionEvent.Resumed;
import org.bookholder.session.SessionEvent.SamplesLost;
import org.bookholder.session.SessionEvent.SoundMeasured;
import org.bookholder.session.SessionEvent.SoundNotSaved;
import org.bookholder.session.SessionEvent.SourceFound;
import org.bookholder.session.SessionEvent.SourceLost;
import org.bookholder.session.SessionEvent.TakeSettled;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

final class SessionTest {
    private static final Script SCRIPT = Scripts.of(
            "The river was cold today.", "Buy a dozen frames.", "Turn them to the sun.", "Then wait for spring.");

    private static SessionState after(SessionEvent... events) {
        return Session.apply(Session.begin(SCRIPT, FatigueLimits.defaults()), List.of(events));
    }

    private static LineNotes line(SessionState state, int number) {
        return state.lines().notes(number);
    }

    @Test
    void beginsWithNothingReadAndNothingToPickUp() {
        SessionState state = after();
        assertThat(state.takes().rolling()).isFalse();
        assertThat(state.lines().all()).extracting(LineNotes::outcome).containsOnly(Outcome.SKIPPED);
        assertThat(state.lines().pickups()).isEmpty();
        assertThat(state.wordsBefore()).isZero();
        assertThat(state.wordsTotal()).isEqualTo(18);
        assertThat(state.measures().pace().live()).isNaN();
        assertThat(state.measures().pace().projected().seconds()).isCloseTo(18 * 0.6, within(0.001));
        assertThat(state.measures().fatigue().warnings()).isEmpty();
    }

    @Test
    void aTakeLastsFromItsStartToItsCut() {
        SessionState rolling = after(rolled(1, 0), moved(4, 1, 3, 2));
        assertThat(rolling.takes().rolling()).isTrue();
        assertThat(rolling.following().position()).isEqualTo(new ReadingPosition(1, 3));
        assertThat(rolling.wordsBefore()).isEqualTo(2);
        assertThat(rolling.takes().all().get(0).end()).isEqualTo(s(4));
        SessionState done = Session.apply(rolling, cut(1, 9));
        assertThat(done.takes().rolling()).isFalse();
        assertThat(done.takes().all()).singleElement().satisfies(take -> {
            assertThat(take.end()).isEqualTo(s(9));
            assertThat(take.when()).isEqualTo(MORNING);
        });
    }

    @Test
    void linesBeforeTheOneAtWhichAReadingBeganAreNotSkipped() {
        SessionState state = after(
                new SessionEvent.TakeStarted(s(0), 1, MORNING, "a microphone", new ReadingPosition(3, 1)),
                settled(complete(1, 1, 4, 4, 4, 6)),
                cut(1, 7));
        assertThat(state.lines().pickups()).extracting(LineNotes::line).containsExactly(3);
        assertThat(LineCounts.of(state.lines().all())).isEqualTo(new LineCounts(1, 1, 2));

        SessionState before = Session.apply(
                state,
                List.of(
                        new SessionEvent.TakeStarted(s(7), 2, MORNING, "a microphone", new ReadingPosition(2, 1)),
                        settled(complete(2, 1, 3, 5, 8, 9))));
        assertThat(before.lines().pickups())
                .as("a later take began before them, and passed line 2")
                .extracting(LineNotes::line)
                .containsExactly(2);
    }

    @Test
    void theBestAttemptIsTheLastCleanOneOfAllTakes() {
        SessionState state = after(
                rolled(1, 0),
                settled(complete(1, 1, 1, 5, 1, 3)),
                settled(complete(1, 2, 1, 5, 4, 6)),
                settled(complete(1, 3, 1, 5, 7, 9, swapped(4, "cold", "gold"))),
                settled(broken(1, 4, 1, 2, 10, 11)));
        assertThat(line(state, 1).outcome()).isEqualTo(Outcome.CLEAN);
        assertThat(line(state, 1).best())
                .hasValueSatisfying(b -> assertThat(b.ordinal()).isEqualTo(2));
        assertThat(line(state, 1).attempts()).hasSize(4);
        SessionState again =
                Session.apply(state, List.of(cut(1, 12), rolled(2, 12), settled(complete(2, 1, 1, 5, 13, 15))));
        assertThat(line(again, 1).best())
                .hasValueSatisfying(b -> assertThat(b.take()).isEqualTo(2));
    }

    @Test
    void withoutACleanAttemptTheBestIsTheLastCompleteOne() {
        SessionState state = after(
                rolled(1, 0),
                settled(complete(1, 1, 2, 4, 1, 3, swapped(3, "dozen", "dollar"))),
                settled(complete(1, 2, 2, 4, 4, 6, swapped(4, "frames", "flames"))),
                settled(broken(1, 3, 2, 2, 10, 11)));
        assertThat(line(state, 2).outcome()).isEqualTo(Outcome.MISREAD);
        assertThat(line(state, 2).best())
                .hasValueSatisfying(b -> assertThat(b.ordinal()).isEqualTo(2));
    }

    @Test
    void aLineThatIsOnlyEverBrokenOffIsIncompleteAndOneNeverReadIsSkipped() {
        SessionState state = after(rolled(1, 0), settled(broken(1, 1, 2, 2, 1, 2)));
        assertThat(line(state, 2).outcome()).isEqualTo(Outcome.INCOMPLETE);
        assertThat(line(state, 2).best()).isEmpty();
        assertThat(line(state, 1).outcome()).isEqualTo(Outcome.SKIPPED);
        assertThat(state.lines().pickups()).extracting(LineNotes::line).containsExactly(1, 2);
    }

    @Test
    void aCorrectedAttemptReplacesTheOneBefore() {
        SessionState state = after(
                rolled(1, 0),
                settled(complete(1, 1, 1, 5, 1, 3, swapped(4, "cold", "gold"))),
                settled(complete(1, 1, 1, 5, 1, 3)));
        assertThat(line(state, 1).attempts()).hasSize(1);
        assertThat(line(state, 1).outcome()).isEqualTo(Outcome.CLEAN);
    }

    @Test
    void anAttemptThatTurnsOutToBeOfAnotherLineMovesThere() {
        SessionState state =
                after(rolled(1, 0), settled(complete(1, 1, 4, 4, 1, 3)), settled(complete(1, 1, 1, 5, 1, 3)));
        assertThat(line(state, 4).attempts()).isEmpty();
        assertThat(line(state, 4).reached()).isFalse();
        assertThat(line(state, 1).outcome()).isEqualTo(Outcome.CLEAN);
        assertThat(state.lines().pickups()).isEmpty();
    }

    @Test
    void settlingATakeReplacesItsAttemptsAndAsidesAndNoOthers() {
        Aside guess = new Aside(2, s(21), s(22), "", 1);
        Aside known = new Aside(2, s(21), s(23), "wait a moment", 1);
        Aside earlier = new Aside(1, s(5), s(6), "hello", 1);
        SessionState state = after(
                rolled(1, 0),
                settled(complete(1, 1, 1, 5, 1, 3)),
                cut(1, 8),
                new TakeSettled(s(8), 1, List.of(complete(1, 1, 1, 5, 1, 3)), List.of(earlier)),
                rolled(2, 20),
                settled(complete(2, 1, 3, 5, 24, 26)),
                settled(complete(2, 2, 4, 4, 26, 28)),
                new TakeSettled(s(30), 2, List.of(), List.of(guess)),
                new TakeSettled(s(30), 2, List.of(complete(2, 1, 2, 4, 24, 26)), List.of(known)));
        assertThat(state.lines().asides()).containsExactly(earlier, known);
        assertThat(line(state, 1).attempts()).hasSize(1);
        assertThat(line(state, 2).attempts()).hasSize(1);
        assertThat(line(state, 3).attempts()).isEmpty();
        assertThat(line(state, 3).reached()).isFalse();
    }

    @Test
    void aJumpDoesNotMarkLinesReadBeforeItAsSkipped() {
        SessionState state = after(rolled(1, 0), moved(2, 2, 1, 5), moved(3, 4, 1, 0));
        assertThat(state.lines().pickups()).extracting(LineNotes::line).containsExactly(2, 3);
    }

    @Test
    void linesTheVoiceJumpedOverArePickupsAtOnceButThoseJustReadAreNot() {
        SessionState state = after(rolled(1, 0), moved(2, 2, 1, 5), moved(4, 3, 1, 4));
        assertThat(state.lines().pickups()).isEmpty();
        SessionState jumped = Session.apply(state, moved(6, 4, 2, 0));
        assertThat(jumped.lines().pickups())
                .extracting(LineNotes::line)
                .contains(3)
                .doesNotContain(4);
        SessionState back = Session.apply(jumped, moved(7, 1, 2, 0));
        assertThat(back.lines().pickups()).isEmpty();
    }

    @Test
    void movingByHandLeavesNothingToPickUp() {
        SessionState state =
                after(rolled(1, 0), new PositionMoved(s(3), new ReadingPosition(4, 1), Mover.HAND, 0), cut(1, 9));
        assertThat(state.lines().pickups()).isEmpty();
        assertThat(state.wordsBefore()).isEqualTo(14);
    }

    @Test
    void aMarkIsAPickupUntilTheLineIsReadCleanAgain() {
        SessionState marked = after(
                rolled(1, 0), settled(complete(1, 1, 1, 5, 1, 3)), new PickupMarked(s(4), 1, "a lorry went past"));
        assertThat(marked.lines().pickups())
                .singleElement()
                .satisfies(l -> assertThat(l.marks()).containsExactly("a lorry went past"));
        SessionState again = Session.apply(marked, settled(complete(1, 2, 1, 5, 5, 7)));
        assertThat(again.lines().pickups()).isEmpty();
        assertThat(line(again, 1).marks()).hasSize(1);
    }

    @Test
    void aMarkPastTheEndBelongsToTheLastLine() {
        assertThat(line(after(new PickupMarked(s(4), 5, "cough")), 4).marked()).isTrue();
    }

    @Test
    void anAttemptAtAMissingLineIsRefused() {
        assertThatThrownBy(() -> after(settled(complete(1, 1, 5, 4, 1, 2))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("line (5)");
    }

    @Test
    void aTroubleIsShownUntilItIsOver() {
        SessionState both = after(
                rolled(1, 0),
                new SourceLost(s(1), "the microphone was unplugged"),
                new RecordingFailed(s(2), "the disk is full"));
        Trouble unrecorded = new Trouble(Trouble.Kind.NOT_RECORDED, "the disk is full");
        assertThat(both.troubles().all())
                .containsExactly(new Trouble(Trouble.Kind.NO_SOUND, "the microphone was unplugged"), unrecorded);
        SessionState found = Session.apply(both, new SourceFound(s(3), "another microphone"));
        assertThat(found.troubles().all()).containsExactly(unrecorded);
        assertThat(Session.apply(found, List.of(cut(1, 4), rolled(2, 4)))
                        .troubles()
                        .all())
                .isEmpty();
    }

    @Test
    void aReaderWhoIsUnderstoodBadlyIsATroubleUntilThatIsBetter() {
        SessionState badly = after(rolled(1, 0), new SessionEvent.Understood(s(60), true, 0.454));
        assertThat(badly.troubles().all()).containsExactly(new Trouble(Trouble.Kind.HEARD_BADLY, "45"));
        assertThat(Session.apply(badly, new SessionEvent.Understood(s(90), false, 0.66))
                        .troubles()
                        .isEmpty())
                .isTrue();
    }

    @Test
    void soundThatIsSavedAgainIsNoTroubleAndWhatWasLostIsKnown() {
        SessionState failed = after(rolled(1, 0), new RecordingFailed(s(2), "the disk is full"));
        assertThat(failed.troubles().all()).hasSize(1);
        UnsavedStretch lost = new UnsavedStretch(1, s(2), s(5));
        SessionState resumed =
                Session.apply(failed, List.of(new SoundNotSaved(s(8), lost), new RecordingResumed(s(8))));
        assertThat(resumed.troubles().isEmpty()).isTrue();
        assertThat(resumed.measures().sound().notSaved()).containsExactly(lost);
        assertThat(Session.apply(resumed, new SoundMeasured(s(9), -20, -3, 0))
                        .measures()
                        .sound()
                        .notSaved())
                .containsExactly(lost);
    }

    @Test
    void soundIsThatOfTheLastSecondAndLossesAddUp() {
        SessionState state = after(
                new SoundMeasured(s(1), -20, -3, 2),
                new SamplesLost(s(1.5), s(0.5)),
                new SoundMeasured(s(2), -22, -6, 1),
                new SamplesLost(s(2.5), s(0.25)));
        assertThat(state.measures().sound()).isEqualTo(new Sound(-22, -6, 3, s(0.75)));
        assertThat(state.now()).isEqualTo(s(2.5));
    }

    @Test
    void livePaceLeavesOutHoldsAndAsides() {
        Script script = Scripts.sized(100, 20, 10);
        List<SessionEvent> events = new ArrayList<>(List.of(rolled(1, 0)));
        List<SessionEvent> words = evenly(script, 1, 0.5);
        events.addAll(words.subList(0, 61));
        events.add(new Held(s(31)));
        events.add(new Resumed(s(91)));
        events.add(new FollowChanged(s(91), FollowState.ASIDE));
        events.add(new FollowChanged(s(100), FollowState.FOLLOWING));
        events.add(moved(100.5, 7, 3, 1));
        SessionState state = Session.apply(Session.begin(script, FatigueLimits.defaults()), events);
        assertThat(state.measures().pace().live()).isCloseTo(120, within(1e-9));
        assertThat(state.measures().pace().lesson()).isCloseTo(120, within(1e-9));
    }

    @Test
    void aSettledTakeCorrectsTheLessonsPace() {
        Attempt one = complete(1, 1, 1, 5, 1, 3);
        Attempt two = complete(1, 2, 2, 4, 13, 15);
        SessionState state = after(
                rolled(1, 0),
                moved(3, 2, 1, 5),
                moved(15.4, 3, 1, 4),
                cut(1, 16),
                new TakeSettled(s(16), 1, List.of(one, two), List.of(new Aside(1, s(4), s(12), "hello there", 1))));
        // 9 words in the 14 s from 1 to 15 less the aside's 8 s
        assertThat(state.measures().pace().lesson()).isCloseTo(90, within(1e-9));
    }

    @Test
    void aTakeThatWasNeverCutEndsWhereItsAudioEnds() {
        SessionState killed = after(rolled(1, 0), moved(60, 2, 1, 5));
        SessionState opened =
                Session.apply(killed, new Opened(s(60), MORNING.plusSeconds(600), "A lesson", "lesson.md", "text"));
        assertThat(opened.takes().rolling()).isFalse();
        SessionState on = Session.apply(opened, rolled(2, 60, MORNING.plusSeconds(660)));
        assertThat(on.measures().fatigue().sinceBreak()).isZero(); // ten minutes after the kill: a real break
        assertThat(on.takes().all()).extracting(Take::number).containsExactly(1, 2);
    }

    @Test
    void timeNeverGoesBack() {
        SessionState state = after(rolled(1, 0), moved(10, 2, 1, 5), settled(complete(1, 1, 1, 5, 1, 3)));
        assertThat(state.now()).isEqualTo(s(10));
        assertThat(state.revision()).isEqualTo(3);
    }
}
