package org.bookholder.follow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.follow.model.FollowEvent.TakeSettled;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.Script;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.FrameLevels;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.testing.Prepared;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class FollowerTest {
    private static final Script LESSON = Scripts.of(
            "Turn the wheel slowly and watch the gap beside the brake",
            "A spoke that rings low is loose and wants half a turn",
            "Count the threads before you tighten anything near the valve",
            "Check both sides again with the lamp behind the rim");

    @Test
    void movesWithEachWordAndOnToTheNextLineAfterItsLast() {
        ReadAloud reader = ReadAloud.of(LESSON).say("turn the wheel slowly");
        assertThat(reader.position()).isEqualTo(new ReadingPosition(1, 5));
        reader.say("and watch the gap beside the brake");
        assertThat(reader.position()).isEqualTo(new ReadingPosition(2, 1));
    }

    @Test
    void callsACleanReadingClean() {
        TakeSettled take = ReadAloud.of(LESSON)
                .say("turn the wheel slowly and watch the gap beside the brake")
                .say("a spoke that rings low is loose and wants half a turn")
                .cut();
        assertThat(take.attempts()).extracting(Attempt::line).containsExactly(1, 2);
        assertThat(take.attempts()).extracting(Attempt::outcome).containsOnly(Outcome.CLEAN);
        assertThat(take.asides()).isEmpty();
        assertThat(take.attempts().get(0).start()).isEqualTo(StreamTime.ofSeconds(0.5));
    }

    @Test
    void ignoresAWordBeforeTheFirstOneOfATake() {
        TakeSettled take = ReadAloud.of(LESSON)
                .say("so turn the wheel slowly and watch the gap beside the brake")
                .cut();
        assertThat(take.attempts())
                .extracting(Attempt::line, Attempt::outcome)
                .containsExactly(tuple(1, Outcome.CLEAN));
        assertThat(take.attempts().get(0).start()).isGreaterThan(StreamTime.ofSeconds(0.8));
    }

    @Test
    void settlesALineInThePauseAfterIt() {
        ReadAloud reader = ReadAloud.of(LESSON).say("turn the wheel slowly and watch the gap beside the brake");
        assertThat(settled(reader))
                .singleElement()
                .satisfies(a -> assertThat(a.outcome()).isEqualTo(Outcome.CLEAN));
        reader.say("a spoke that rings low is loose and wants half a window");
        assertThat(settled(reader))
                .extracting(Attempt::ordinal, Attempt::line, Attempt::outcome)
                .containsExactly(tuple(1, 1, Outcome.CLEAN), tuple(2, 2, Outcome.MISREAD));
    }

    @Test
    void doesNotSettleALineThatIsNotAtItsEnd() {
        ReadAloud reader = ReadAloud.of(LESSON).say("turn the wheel slowly and watch");
        assertThat(settled(reader)).isEmpty();
        reader.say("the gap beside the brake");
        assertThat(settled(reader)).extracting(Attempt::outcome).containsExactly(Outcome.CLEAN);
    }

    @Test
    void reportsCorrectionsAfterThePause() {
        ReadAloud reader = ReadAloud.of(LESSON)
                .say("turn the wheel slowly and watch the gap beside the window")
                .say("beside the brake")
                .say("a spoke that rings low is loose and wants half a turn");
        assertThat(settled(reader))
                .extracting(Attempt::ordinal, Attempt::outcome)
                .startsWith(tuple(1, Outcome.MISREAD), tuple(1, Outcome.CLEAN))
                .endsWith(tuple(2, Outcome.CLEAN));
    }

    private static List<Attempt> settled(ReadAloud reader) {
        return reader.events().stream()
                .filter(FollowEvent.AttemptSettled.class::isInstance)
                .map(e -> ((FollowEvent.AttemptSettled) e).attempt())
                .toList();
    }

    @Test
    void leavesASkippedLineWithoutAttempt() {
        TakeSettled take = ReadAloud.of(LESSON)
                .say("turn the wheel slowly and watch the gap beside the brake")
                .say("count the threads before you tighten anything near the valve")
                .cut();
        assertThat(take.attempts()).extracting(Attempt::line).containsExactly(1, 3);
    }

    @Test
    void countsARestartAsAnAttemptOfItsOwn() {
        TakeSettled take = ReadAloud.of(LESSON)
                .say("turn the wheel slowly and")
                .say("turn the wheel slowly and watch the gap beside the brake")
                .cut();
        assertThat(take.attempts())
                .extracting(Attempt::line, Attempt::complete)
                .containsExactly(tuple(1, false), tuple(1, true));
    }

    @Test
    void stopsDuringAnAsideAndContinuesAfterIt() {
        ReadAloud reader = ReadAloud.of(LESSON)
                .say("turn the wheel slowly and watch the gap beside the brake")
                .say("sorry somebody left their telephone on could you switch it off");
        assertThat(reader.position()).isEqualTo(new ReadingPosition(2, 1));
        assertThat(reader.events())
                .filteredOn(FollowEvent.Changed.class::isInstance)
                .extracting(e -> ((FollowEvent.Changed) e).state())
                .containsExactly(FollowState.ASIDE);
        TakeSettled take = reader.say("a spoke that rings low is loose and wants half a turn")
                .cut();
        assertThat(take.asides()).singleElement().satisfies(a -> {
            assertThat(a.line()).isEqualTo(1);
            assertThat(a.said()).startsWith("sorry somebody left");
        });
        assertThat(take.attempts()).extracting(Attempt::outcome).containsExactly(Outcome.CLEAN, Outcome.CLEAN);
    }

    @Test
    void jumpsWhereThePresenterJumps() {
        ReadAloud reader =
                ReadAloud.of(LESSON).say("turn the wheel slowly").say("check both sides again with the lamp");
        assertThat(reader.position()).isEqualTo(new ReadingPosition(4, 8));
    }

    @Test
    void anAsideWithWordsOfAnotherLineDoesNotMoveThePosition() {
        ReadAloud reader = ReadAloud.of(LESSON)
                .say("turn the wheel slowly and watch the gap beside the brake")
                .say("sorry my phone rang could you please check both sides");
        assertThat(reader.position()).isEqualTo(new ReadingPosition(2, 1));
        reader.say("a spoke that rings low");
        assertThat(reader.position()).isEqualTo(new ReadingPosition(2, 6));
    }

    @Test
    void comesBackAnywhereInTheScriptFromAnAside() {
        ReadAloud reader = ReadAloud.of(LESSON)
                .say("turn the wheel slowly and watch the gap beside the brake")
                .say("sorry my phone rang let us go on")
                .say("check both sides again with");
        assertThat(reader.position()).isEqualTo(new ReadingPosition(4, 6));
    }

    @Test
    void doesNotJumpForACommonWord() {
        ReadAloud reader = ReadAloud.of(LESSON).say("turn the wheel slowly").say("the");
        assertThat(reader.position()).isEqualTo(new ReadingPosition(1, 5));
    }

    @Test
    void continuesFromAPositionSetByHand() {
        ReadAloud reader = ReadAloud.of(LESSON).say("turn the wheel slowly");
        assertThat(reader.follower().move(reader.now(), new ReadingPosition(3, 1)))
                .containsExactly(new FollowEvent.Moved(reader.now(), new ReadingPosition(3, 1), 0));
        reader.say("count the threads");
        assertThat(reader.position()).isEqualTo(new ReadingPosition(3, 4));
    }

    @Test
    void acceptsARevisedWordAfterAMoveByHand() {
        Follower follower = new Follower(Prepared.of(LESSON));
        StreamTime at = StreamTime.ofSeconds(1);
        follower.hear(new Hypothesis.Partial(EarKind.SCRIPT, at, List.of("turn")));
        follower.move(at, new ReadingPosition(2, 1));
        follower.hear(new Hypothesis.Partial(EarKind.SCRIPT, at, List.of("turn", "a", "spoke", "that", "rings")));
        List<FollowEvent> events =
                follower.hear(new Hypothesis.Partial(EarKind.SCRIPT, at, List.of("turn", "a", "spoke")));
        assertThat(events)
                .filteredOn(FollowEvent.Moved.class::isInstance)
                .extracting(e -> ((FollowEvent.Moved) e).position())
                .isSubsetOf(new ReadingPosition(2, 3));
        follower.hear(new Hypothesis.Partial(EarKind.SCRIPT, at, List.of("turn", "a", "spoke", "that")));
    }

    @Test
    void ignoresSpeechDuringAHold() {
        ReadAloud reader = ReadAloud.of(LESSON).say("turn the wheel slowly and watch the gap beside the brake");
        reader.follower().hold(reader.now());
        reader.say("a spoke that rings low is loose and wants half a turn");
        reader.follower().resume(reader.now());
        TakeSettled take = reader.say("count the threads before you tighten anything near the valve")
                .cut();
        assertThat(take.attempts()).extracting(Attempt::line).containsExactly(1, 3);
        assertThat(take.asides()).isEmpty();
    }

    @Test
    void reportsAWordSwappedForTheLastOne() {
        List<Attempt> first = ReadAloud.of(LESSON)
                .say(
                        "turn the wheel slowly and watch the gap beside the window | a spoke that rings low is loose and wants half a turn")
                .cut()
                .attempts();
        assertThat(first).extracting(Attempt::outcome).containsExactly(Outcome.MISREAD, Outcome.CLEAN);
        assertThat(first.get(0).deviations())
                .extracting(Deviation::written, Deviation::said, Deviation::kind)
                .containsExactly(tuple("brake", "window", Deviation.Kind.SWAPPED));
    }

    @Test
    void reportsAnAddedWord() {
        assertThat(firstLine("turn the wheel slowly backwards and watch the gap beside the brake")
                        .deviations())
                .singleElement()
                .satisfies(added -> {
                    assertThat(added.kind()).isEqualTo(Deviation.Kind.ADDED);
                    assertThat(added.said()).isEqualTo("backwards");
                    assertThat(added.word()).isEqualTo(5);
                });
    }

    @Test
    void reportsAnAddedWordNextToAMisheardFunctionWord() {
        assertThat(firstLine("turn the wheel slowly backwards an watch the gap beside the brake")
                        .deviations())
                .extracting(Deviation::kind, Deviation::said)
                .containsExactly(tuple(Deviation.Kind.ADDED, "backwards"));
    }

    @Test
    void doesNotReportARepeatedWordOrAFiller() {
        assertThat(firstLine("turn the wheel wheel slowly um and watch the gap beside the brake")
                        .outcome())
                .isEqualTo(Outcome.CLEAN);
    }

    @Test
    void aLineContinuedAfterALongAsideIsANewAttempt() {
        TakeSettled take = ReadAloud.of(LESSON)
                .say("turn the | sorry there was somebody at our door just now |")
                .say("turn the wheel slowly and watch the gap beside the brake")
                .cut();
        assertThat(take.attempts()).extracting(Attempt::complete).endsWith(true);
        assertThat(take.asides()).hasSize(1);
    }

    @Test
    void aLineThatTheCutBreaksOffIsIncomplete() {
        assertThat(cutAfter("turn the wheel slowly and watch the gap beside", 0).outcome())
                .isEqualTo(Outcome.INCOMPLETE);
        assertThat(cutAfter("turn the wheel slowly and watch the gap beside the brake", 0)
                        .outcome())
                .isEqualTo(Outcome.CLEAN);
        assertThat(cutAfter("turn the wheel slowly and watch the gap beside the window", 0.5)
                        .outcome())
                .isEqualTo(Outcome.MISREAD);
    }

    /** Half a second of room, three words a second, and so much room again before the take is cut. */
    private static Attempt cutAfter(String text, double quiet) {
        List<RecognizedWord> words = new ArrayList<>();
        for (String word : text.split(" ", -1)) {
            double start = 0.5 + words.size() / 3.0;
            words.add(new RecognizedWord(word, StreamTime.ofSeconds(start), StreamTime.ofSeconds(start + 1 / 3.0), 1));
        }
        StreamTime end = words.get(words.size() - 1).end().plus(StreamTime.ofSeconds(quiet));
        byte[] levels = new byte[(int) Math.round(end.seconds() * FrameLevels.PER_SECOND)];
        Arrays.fill(levels, (byte) -60);
        int voiced = levels.length - (int) Math.round(quiet * FrameLevels.PER_SECOND);
        Arrays.fill(levels, FrameLevels.PER_SECOND / 2, voiced, (byte) -20);
        Follower follower = new Follower(Prepared.of(LESSON));
        follower.startTake(1, StreamTime.ZERO, ReadingPosition.START);
        follower.hear(new FrameLevels(StreamTime.ZERO, levels));
        follower.hear(new Hypothesis.Final(EarKind.OPEN, end, words));
        follower.hear(new Hypothesis.Final(
                EarKind.SCRIPT,
                end,
                words.stream().filter(w -> !w.text().equals("window")).toList()));
        TakeSettled take = (TakeSettled) follower.endTake(end).get(0);
        return take.attempts().get(0);
    }

    private static Attempt firstLine(String said) {
        List<Attempt> attempts = ReadAloud.of(LESSON).say(said).cut().attempts();
        assertThat(attempts).hasSize(1);
        return attempts.get(0);
    }
}
