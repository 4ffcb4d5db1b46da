package org.bookholder.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/**
 * What is an error in reading aloud: US Department of Education, "Accelerating Student Learning: Monitoring Reading"
 * (Warkomski), the source's own examples; repairs: HCRC Disfluency Coding Manual (Lickley), its worked cases.
 *
 * <p>Each example is read within a longer script, as it would be in a lesson.
 */
final class OralReadingRulesTest {
    @Test
    @DisplayName("rule 7: an omission is an error")
    void callsAnOmittedWord() {
        assertThat(deviations("Mario climbed the oak tree.", "mario climbed the tree"))
                .containsExactly("oak dropped");
    }

    @Test
    @DisplayName("rule 2: a self-correction is correct")
    void forgivesASelfCorrection() {
        assertThat(deviations("The river was cold", "the river was could cold")).isEmpty();
    }

    @Test
    @DisplayName("rule 1: another word in context is an error")
    void callsAnotherWord() {
        assertThat(deviations("Mark saw an elephant.", "mark saw an anchor")).containsExactly("elephant swapped");
    }

    @Test
    @DisplayName("Maryland CBM (Speece): a repetition is not an error")
    void forgivesARepetition() {
        assertThat(deviations("Mario climbed the oak tree.", "mario climbed the climbed the oak tree"))
                .isEmpty();
    }

    @Test
    @DisplayName("HCRC: one-word repeat, 'right to my my left'")
    void forgivesARepeatedWord() {
        assertThat(deviations("Right to my left.", "right to my my left")).isEmpty();
    }

    @Test
    @DisplayName("HCRC: two-word repeat with a filled pause, 'go to your left until you're uh until you're level'")
    void forgivesARepeatWithAFilledPause() {
        assertThat(deviations(
                        "Go to your left until you're level.", "go to your left until you're uh until you're level"))
                .isEmpty();
    }

    private static List<String> deviations(String line, String read) {
        String before = "Nobody answered the question from the back row";
        String after = "Everybody wrote the number down at once";
        var take = ReadAloud.of(Scripts.of(before, line, after))
                .say("nobody answered the question from the back row")
                .say(read)
                .say("everybody wrote the number down at once")
                .cut();
        List<Attempt> attempts =
                take.attempts().stream().filter(a -> a.line() == 2).toList();
        assertThat(attempts).singleElement().matches(Attempt::complete);
        return attempts.get(0).deviations().stream()
                .map(d -> d.written() + " " + d.kind().label())
                .toList();
    }
}
