package org.bookholder.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.follow.judge.OneLine;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/**
 * Repairs in mid-sentence: the worked cases of the HCRC Disfluency Coding Manual (Lickley), sections 6 and 7, each as the
 * reading of a line that says what the speaker meant. A fragment comes from the ears as an unknown word, or not at all.
 */
final class RepairsTest {
    @Test
    @DisplayName("fragment repeat: but n- not too far north")
    void aFragmentIsNoError() {
        assertThat(OneLine.deviations("But not too far north.", "but n not too far north"))
                .isEmpty();
    }

    @Test
    @DisplayName("1-word repeat: right to my my left")
    void aRepeatedWordIsNoError() {
        assertThat(OneLine.deviations("Right to my left.", "right to my my left"))
                .isEmpty();
    }

    @Test
    @DisplayName("2-word repeat with a filled pause: go to your left until you're uh until you're level")
    void aRepeatAfterAFilledPauseIsNoError() {
        assertThat(OneLine.deviations(
                        "Go to your left until you're level.", "go to your left until you're uh until you're level"))
                .isEmpty();
    }

    @Test
    @DisplayName("substitution: like to the r- to the left of the burnt forest")
    void aWordBegunWrongAndPutRightIsNoError() {
        assertThat(OneLine.deviations(
                        "Like to the left of the burnt forest.", "like to the r to the left of the burnt forest"))
                .isEmpty();
    }

    @Test
    @DisplayName("substitution with what comes before it said again: beside the window beside the brake")
    void aWholeWordPutRightIsNoError() {
        assertThat(OneLine.deviations(
                        "Watch the gap beside the brake and the rim.",
                        "watch the gap beside the window beside the brake and the rim"))
                .isEmpty();
        assertThat(OneLine.deviations(
                        "Watch the gap beside the brake and the rim.",
                        "watch the gap beside the window the brake and the rim"))
                .isEmpty();
    }

    @Test
    @DisplayName("deletion: well go down until you're in a ver- right see the windows")
    void anAbandonedBeginningIsNotPartOfTheLine() {
        ReadAloud reader = ReadAloud.of(Scripts.of(
                        "Nobody answered the question from the back row",
                        "Well go down until you're in a village",
                        "Right see the windows",
                        "Everybody wrote the number down at once"))
                .say("nobody answered the question from the back row")
                .say("well go down until you're in a ver")
                .say("right see the windows")
                .say("everybody wrote the number down at once");
        List<Attempt> attempts = reader.cut().attempts();
        assertThat(attempts).extracting(Attempt::line).containsExactly(1, 2, 3, 4);
        assertThat(attempts.get(1).outcome()).isNotEqualTo(Outcome.CLEAN);
        assertThat(attempts.get(2).outcome()).isEqualTo(Outcome.CLEAN);
    }

    @Test
    @DisplayName("delete and repeat: go back to your go to your right")
    void aLineBegunAnewFromItsFirstWordIsTriedAgain() {
        List<Attempt> attempts = OneLine.read("Go to your right.", "go back to your go to your right");
        assertThat(attempts.get(attempts.size() - 1).outcome()).isEqualTo(Outcome.CLEAN);
    }
}
