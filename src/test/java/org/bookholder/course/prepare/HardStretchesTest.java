package org.bookholder.course.prepare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.bookholder.course.prepare.HardStretch.Kind;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class HardStretchesTest {
    @Test
    void moreThanEighteenSyllablesWithoutABreathMark() throws ProblemException {
        String eighteen = "you turn it and you look at it and then you sit and you think of a wheel";
        assertThat(in("And so " + eighteen.substring(4) + "."))
                .extracting(HardStretch::kind)
                .contains(Kind.BREATH);
        assertThat(in(eighteen.replaceFirst("you", "You") + ".")).isEmpty();
        assertThat(in("And so " + eighteen.replaceFirst(" and then", ", and then") + "."))
                .isEmpty();
    }

    @Test
    void numbersCountAsTheyAreSpoken() throws ProblemException {
        // Fourteen syllables as written; 1,234,567 alone is spoken in eighteen.
        assertThat(in("You and I will look at it and find 1,234,567 of them in the box."))
                .extracting(HardStretch::kind, HardStretch::count)
                .contains(tuple(Kind.BREATH, 32));
    }

    @Test
    void aLongSentence() throws ProblemException {
        String half = "you turn it and you look at it and then you sit";
        assertThat(in("First " + half + ", and then " + half + ", and so on."))
                .extracting(HardStretch::kind)
                .containsExactly(Kind.LONG);
    }

    @Test
    void threeNumbersInARow() throws ProblemException {
        assertThat(in("Take 3, 5 and 7 of them.")).containsExactly(new HardStretch(Kind.NUMBERS, 1, "3, 5 and 7", 3));
        assertThat(in("Take 3 of them, 5 of those and 7 of these.")).isEmpty();
        assertThat(in("It is 10 by 20.")).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "She sells sea shells on the shore.",
                "Peter Piper picked a peck of peppers.",
                "Bring the brown brake bright side up.",
                "Freshly fried flying fish, then fresh fried frogs."
            })
    void wordsInARowThatBeginAlike(String text) throws ProblemException {
        assertThat(in(text))
                .extracting(HardStretch::kind)
                .containsOnly(Kind.ONSETS)
                .isNotEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Turn the tyre twice.",
                "The wheel and the rim are true.",
                "It was what we would want with it.",
                "Slowly, slowly, slowly."
            })
    void ordinaryTextIsNotHard(String text) throws ProblemException {
        assertThat(in(text)).isEmpty();
    }

    @Test
    void wordsThatTheRecogniserDoesNotKnow() throws ProblemException {
        Set<String> known = Set.of("hello", "again", "bury");
        assertThat(HardStretches.in(
                        script("Hello.\nHello again, Wendlebury. Wendlebury!"), Optional.of(known::contains)))
                .containsExactly(new HardStretch(Kind.UNKNOWN, 2, "wendlebury", 1));
    }

    @Test
    void aPossessiveIsAsEasyAsItsWord() throws ProblemException {
        Set<String> known = Set.of("the", "tail", "is", "long", "kite");
        Script script = script("The kite's tail is long.\n");
        assertThat(HardStretches.in(script, Optional.of(known::contains))).isEmpty();
        assertThat(HardStretches.in(script, Optional.of(word -> known.contains(word) && !word.equals("kite"))))
                .extracting(HardStretch::words)
                .containsExactly("kite's");
    }

    private static List<HardStretch> in(String text) throws ProblemException {
        return HardStretches.in(script(text), Optional.empty());
    }

    private static Script script(String text) throws ProblemException {
        return ScriptReader.parse(text, "l.md", Format.MARKDOWN);
    }
}
