package org.bookholder.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.Script;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Hypothesis;
import org.bookholder.testing.HeardLive;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

/** Where the position is while words are being said: by what the ears report and by the sound itself. */
final class LivePositionTest {
    private static final Script LESSON = Scripts.of(
            "Turn the wheel slowly and watch the gap beside the brake",
            "A spoke that rings low is loose and wants half a turn",
            "Count the threads before you tighten anything near the valve",
            "Check both sides again with the lamp behind the rim");

    private static final String BUT_THE_LAST = "turn the wheel slowly and watch the gap beside the";

    private final HeardLive take = new HeardLive(LESSON);

    // --- the end of a line

    /** A recogniser that knows the line reports its last word while that word is still being said. */
    @Test
    void theLastWordIsTheOneBeingReadUntilItsSoundIsOver() {
        take.say(BUT_THE_LAST).voice(0.1).reportScript("brake").voice(0.2);
        assertThat(take.position()).isEqualTo(at(1, 11));
        take.quiet(0.1);
        assertThat(take.position()).as("as short as a stop consonant").isEqualTo(at(1, 11));
        take.quiet(0.1);
        assertThat(take.position()).isEqualTo(at(2, 1));
    }

    @Test
    void theLastWordIsOverAfterASecondThoughTheVoiceGoesOn() {
        take.say(BUT_THE_LAST).voice(0.1).reportScript("brake").voice(0.9);
        assertThat(take.position()).isEqualTo(at(1, 11));
        take.voice(0.3);
        assertThat(take.position()).isEqualTo(at(2, 1));
    }

    @Test
    void aLastWordThatIsNotHeardIsNotWaitedForInAPause() {
        take.say(BUT_THE_LAST).quiet(0.3);
        assertThat(take.position()).isEqualTo(at(1, 11));
        take.quiet(0.1);
        assertThat(take.position()).isEqualTo(at(2, 1));
    }

    @Test
    void wordsAtTheEndOfWhichOnlyTheSoundIsHeardCountAsRead() {
        take.say("turn the wheel slowly and watch the gap").voice(1.2).quiet(0.4);
        assertThat(take.position()).isEqualTo(at(2, 1));
    }

    @Test
    void aLineThatWasTakenAsEndedStaysSoWhenTheVoiceGoesOn() {
        take.say(BUT_THE_LAST).quiet(0.6).voice(0.5);
        assertThat(take.position()).isEqualTo(at(2, 1));
        take.say("a spoke");
        assertThat(take.position()).isEqualTo(at(2, 3));
        assertThat(take.moves().stream().mapToInt(FollowEvent.Moved::wordsRead).sum())
                .isEqualTo(11 + 2);
    }

    @Test
    void aLineThatWasTakenAsEndedGoesOnWithItsLastWord() {
        take.say(BUT_THE_LAST).quiet(0.6).say("brake").quiet(0.2).say("a");
        assertThat(take.position()).isEqualTo(at(2, 2));
        assertThat(take.moves()).extracting(move -> move.position().line()).isSorted();
    }

    @Test
    void aHandMovesBackIntoALineThatWasTakenAsEnded() {
        take.say(BUT_THE_LAST).quiet(0.6);
        take.follower().move(take.now(), at(1, 5));
        take.voice(0.1);
        assertThat(take.follower().move(take.now(), at(1, 5)))
                .containsExactly(new FollowEvent.Moved(take.now(), at(1, 5), 0));
        take.say("and");
        assertThat(take.position()).isEqualTo(at(1, 6));
    }

    @Test
    void aPauseBeforeTheLastWordsIsWaitedThrough() {
        take.say("turn the wheel slowly and watch the gap").quiet(3);
        assertThat(take.position()).isEqualTo(at(1, 9));
    }

    @Test
    void aSoundTooShortForTheLastWordsIsNone() {
        take.say("turn the wheel slowly and watch the gap").voice(0.1).quiet(1);
        assertThat(take.position()).isEqualTo(at(1, 9));
    }

    @Test
    void soundMuchLongerThanTheLastWordsIsAnAside() {
        take.say("turn the wheel slowly and watch the gap").voice(2.5).quiet(1);
        assertThat(take.position()).isEqualTo(at(1, 9));
    }

    @Test
    void moreThanFourWordsAreNotTakenAsReadByTheirSound() {
        take.say("turn the wheel slowly and watch").voice(1.5).quiet(1);
        assertThat(take.position()).isEqualTo(at(1, 7));
    }

    @Test
    void aPauseBeforeALineLeavesThePositionAtItsBeginning() {
        take.say(BUT_THE_LAST + " brake").quiet(10);
        assertThat(take.position()).isEqualTo(at(2, 1));
    }

    @Test
    void quietBeforeTheFirstWordMovesNothing() {
        take.quiet(20);
        assertThat(take.moves()).hasSize(1);
    }

    // --- reading on and jumping

    @Test
    void aMoveTellsHowManyWordsWereRead() {
        take.say("turn the wheel slowly");
        assertThat(take.moves().stream().mapToInt(FollowEvent.Moved::wordsRead).sum())
                .isEqualTo(4);
    }

    @Test
    void aJumpCountsNoWordsAsRead() {
        take.say("turn the wheel").quiet(1).ends();
        int before = take.moves().size();
        take.say("check both sides again with");
        assertThat(take.position()).isEqualTo(at(4, 6));
        FollowEvent.Moved jump = take.moves().get(before);
        assertThat(jump.position().line()).isEqualTo(4);
        assertThat(jump.wordsRead()).isZero();
    }

    @Test
    void aFarLineIsBelievedAfterItsThirdWord() {
        take.say("turn the wheel").quiet(1).ends();
        take.say("check both");
        assertThat(take.position().line()).isEqualTo(1);
        take.say("sides");
        assertThat(take.position()).isEqualTo(at(4, 4));
    }

    @Test
    void afterAnAsideAFarLineIsBelievedAfterItsFifthWord() {
        take.say("turn the wheel").quiet(1).ends();
        take.sayBesideTheScript("[unk] [unk] [unk]", "sorry my phone");
        take.quiet(1).ends();
        take.say("check both sides again");
        assertThat(take.position().line()).isEqualTo(1);
        take.say("with");
        assertThat(take.position()).isEqualTo(at(4, 6));
    }

    @Test
    void theNextLineIsBelievedAtItsFirstWordAfterABrokenOffOne() {
        take.say("turn the wheel slowly").quiet(1).ends();
        take.say("a spoke");
        assertThat(take.position()).isEqualTo(at(2, 3));
    }

    @Test
    void theNextLineIsBelievedThoughItsFirstWordWasMisheard() {
        take.say("turn the wheel slowly").quiet(1).ends();
        take.sayBesideTheScript("spoke", "spoke");
        assertThat(take.position().line()).isEqualTo(1);
        take.say("that");
        assertThat(take.position()).isEqualTo(at(2, 4));
    }

    @Test
    void theOpenEarDeniesAJumpThatTheScriptEarMadeUp() {
        take.say("turn the wheel").quiet(1).ends();
        take.sayBesideTheScript("check both sides", "never mind this");
        assertThat(take.position().line()).isEqualTo(1);
    }

    @Test
    void anOpenEarThatIsFarBehindDeniesNothing() {
        take.say("turn the wheel").quiet(2).ends().quiet(1);
        take.sayWithTheOpenEarBehind("check both sides");
        assertThat(take.position()).isEqualTo(at(4, 4));
    }

    @Test
    void theMiddleOfAnotherLineNeedsMoreThanItsBeginning() {
        take.say("turn the wheel").quiet(1).ends();
        take.say("before you tighten");
        assertThat(take.position().line()).isEqualTo(1);
        take.say("anything near the");
        assertThat(take.position()).isEqualTo(at(3, 10));
    }

    // --- beside the script

    @Test
    void oneWordBesideTheScriptIsNoAsideButTwoAre() {
        take.say("turn the wheel slowly and watch the gap beside the brake")
                .quiet(1)
                .ends();
        take.sayBesideTheScript("[unk]", "sorry");
        assertThat(states()).isEmpty();
        take.sayBesideTheScript("[unk]", "somebody");
        assertThat(states()).containsExactly(FollowState.ASIDE);
    }

    @Test
    void thePositionCountsAsLostAfterThirtyWordsBesideTheScript() {
        take.say("turn the wheel slowly and watch the gap beside the brake")
                .quiet(1)
                .ends();
        for (int i = 0; i < 29; i++) {
            take.sayBesideTheScript("[unk]", "so");
        }
        assertThat(states()).containsExactly(FollowState.ASIDE);
        take.sayBesideTheScript("[unk]", "so");
        assertThat(states()).containsExactly(FollowState.ASIDE, FollowState.LOST);
        take.quiet(1).ends();
        take.say("a spoke that rings low is loose");
        assertThat(states()).endsWith(FollowState.FOLLOWING);
    }

    @Test
    void aNewTakeFollowsFromItsBeginning() {
        take.say("turn the wheel slowly and watch the gap beside the brake")
                .quiet(1)
                .ends();
        take.sayBesideTheScript("[unk] [unk] [unk]", "so what now");
        List<FollowEvent> begun = take.follower().startTake(2, take.now(), at(3, 1));
        assertThat(begun).containsExactly(new FollowEvent.Moved(take.now(), at(3, 1), 0));
        List<FollowEvent> heard =
                take.follower().hear(new Hypothesis.Partial(EarKind.SCRIPT, take.now(), List.of("count")));
        assertThat(heard).containsExactly(new FollowEvent.Moved(take.now(), at(3, 2), 1));
    }

    // --- by hand

    @Test
    void nothingMovesDuringAHold() {
        take.say("turn the wheel slowly and watch the gap beside the")
                .follower()
                .hold(take.now());
        take.reportScript("brake").quiet(3);
        assertThat(take.position()).isEqualTo(at(1, 11));
        take.follower().resume(take.now());
        take.quiet(0.1);
        assertThat(take.position()).isEqualTo(at(2, 1));
    }

    @Test
    void aHandMovesToAnyWordOfTheScript() {
        assertThat(moved(at(2, 4))).isEqualTo(at(2, 4));
        assertThat(moved(at(2, 12))).isEqualTo(at(2, 12));
        assertThat(moved(at(2, 13))).as("behind the last word of a line").isEqualTo(at(2, 12));
        assertThat(moved(at(4, 10))).isEqualTo(at(4, 10));
        assertThat(moved(at(5, 1))).as("behind the last line").isEqualTo(at(5, 1));
        assertThat(moved(at(9, 3))).isEqualTo(at(5, 1));
    }

    @Test
    void theVoiceGoesOnWhereAHandHasMoved() {
        take.say("turn the wheel slowly");
        take.follower().move(take.now(), at(3, 1));
        take.say("count");
        assertThat(take.position()).isEqualTo(at(3, 2));
        take.quiet(1).ends();
        take.follower().move(take.now(), at(2, 1));
        take.say("a");
        assertThat(take.position()).isEqualTo(at(2, 2));
    }

    @Test
    void aMoveByHandIsToldWithItsTime() {
        StreamTime now = take.now();
        assertThat(take.follower().move(now, at(2, 1))).containsExactly(new FollowEvent.Moved(now, at(2, 1), 0));
    }

    private ReadingPosition moved(ReadingPosition to) {
        return ((FollowEvent.Moved) take.follower().move(take.now(), to).get(0)).position();
    }

    private List<FollowState> states() {
        return take.events().stream()
                .filter(FollowEvent.Changed.class::isInstance)
                .map(event -> ((FollowEvent.Changed) event).state())
                .toList();
    }

    private static ReadingPosition at(int line, int word) {
        return new ReadingPosition(line, word);
    }
}
