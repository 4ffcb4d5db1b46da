package org.bookholder.handoff.captions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.s;

import java.util.Arrays;
import java.util.List;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.WordTime;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/** Times of a line's six words, of which an attempt from 1 s to 7 s has heard some. */
final class SaidWordsTest {
    private static final List<ScriptWord> WORDS =
            Scripts.of("Every wheel begins with its hub.").lines().get(0).words();

    @Test
    void wordsThatWereNotHeardShareTheTimeBetweenTheOthers() {
        assertThat(spread(heard(3, 3, 4)))
                .containsExactly(
                        "Every 1.0-2.0",
                        "wheel 2.0-3.0",
                        "begins 3.0-4.0",
                        "with 4.0-5.0",
                        "its 5.0-6.0",
                        "hub. 6.0-7.0");
        assertThat(spread()).first().isEqualTo("Every 1.0-2.0");
        assertThat(spread(heard(1, 1, 1.5), heard(6, 6, 7)))
                .startsWith("Every 1.0-1.5", "wheel 1.5-2.625")
                .endsWith("hub. 6.0-7.0");
    }

    @Test
    void aFormulaStandsAsItIsSaidAndAPriceAsItIsWritten() throws ProblemException {
        List<ScriptWord> words = ScriptReader.parse(
                        "It grows with $x^2$, the $n$th time, not $5 or $10.", "lesson.md", Format.MARKDOWN)
                .lines()
                .get(0)
                .words();
        Attempt attempt = new Attempt(1, 1, 1, s(1), s(9), true, List.of(), List.of());
        assertThat(SaidWords.of(words, attempt).stream().map(TimedWord::text))
                .containsSequence("with", "x squared,", "the", "n th", "time,", "not", "$5");
    }

    @Test
    void aWordThatIsHeardAgainOrOutOfOrderKeepsItsFirstTime() {
        assertThat(spread(heard(2, 2, 3), heard(2, 3, 4), heard(1, 4, 5), heard(3, 5, 6)))
                .containsSubsequence("Every 1.0-2.0", "wheel 2.0-3.0", "begins 5.0-6.0")
                .hasSize(6);
    }

    @Test
    void timesThatGoBackAndWordsBeyondTheLineAreLeftOut() {
        assertThat(spread(heard(1, 1, 3), heard(2, 2.5, 4), heard(9, 5, 6)))
                .containsExactly(
                        "Every 1.0-3.0",
                        "wheel 3.0-3.8",
                        "begins 3.8-4.6",
                        "with 4.6-5.4",
                        "its 5.4-6.2",
                        "hub. 6.2-7.0");
    }

    @Test
    void wordsThatWereSaidOtherwiseStandAsTheyWereSaid() {
        assertThat(said("Every wheel begins with its hub.", swapped(2, "wheel", "meal")))
                .isEqualTo("Every meal begins with its hub.");
        assertThat(said("Every wheel begins with its hub.", swapped(6, "hub", "tub")))
                .isEqualTo("Every wheel begins with its tub.");
        assertThat(said("Every wheel begins with its hub.", swapped(1, "every", "any")))
                .isEqualTo("Any wheel begins with its hub.");
        assertThat(said("Every wheel begins with its hub.", dropped(6))).isEqualTo("Every wheel begins with its.");
        assertThat(said("Every wheel begins with its hub.", dropped(1))).isEqualTo("Wheel begins with its hub.");
        assertThat(said("Every wheel begins with its hub.", added(3, "surely really")))
                .isEqualTo("Every wheel surely really begins with its hub.");
        assertThat(said("Every wheel begins with its hub.", added(7, "too")))
                .isEqualTo("Every wheel begins with its hub too.");
        assertThat(said("Every wheel begins with its hub.", swapped(2, "wheel", "")))
                .isEqualTo("Every wheel begins with its hub.");
    }

    /** Nobody says a bullet; a number is shown if it was heard. */
    @Test
    void theMarkOfAListsItemIsShownOnlyIfItWasRead() throws ProblemException {
        List<ScriptLine> items = ScriptReader.parse("- Rim tape\n\n2. two jars\n3. Take it\n", "l", Format.MARKDOWN)
                .lines();

        assertThat(saidItem(items.get(0), "", List.of())).isEqualTo("Rim tape");
        assertThat(saidItem(items.get(0), "", List.of(swapped(1, "rim", "trim"))))
                .isEqualTo("Trim tape");
        assertThat(saidItem(items.get(1), "", List.of())).isEqualTo("two jars");
        assertThat(saidItem(items.get(1), "two", List.of())).isEqualTo("two jars");
        assertThat(saidItem(items.get(1), "two two", List.of())).isEqualTo("2. two jars");
        assertThat(saidItem(items.get(1), "number two two", List.of())).isEqualTo("2. two jars");
        assertThat(saidItem(items.get(2), "take", List.of(swapped(1, "take", "rake"))))
                .isEqualTo("Rake it");
        assertThat(saidItem(items.get(2), "third take", List.of())).isEqualTo("3. Take it");
    }

    private static String saidItem(ScriptLine line, String first, List<Deviation> deviations) {
        Attempt attempt =
                new Attempt(1, 1, 1, s(1), s(7), true, List.of(new WordTime(1, s(1), s(2), first)), deviations);
        return new SpokenLine(1, SaidWords.of(line.words(), attempt)).text();
    }

    @Test
    void addedWordsTakeTheTimeBetweenTheirNeighbours() {
        Attempt attempt = new Attempt(
                1, 1, 1, s(1), s(7), true, List.of(heard(2, 2, 3), heard(3, 4, 5)), List.of(added(3, "surely really")));
        assertThat(times(SaidWords.of(WORDS, attempt)))
                .containsSubsequence("wheel 2.0-3.0", "surely 3.0-3.5", "really 3.5-4.0", "begins 4.0-5.0");
    }

    @Test
    void aLineThatWasBrokenOffEndsWithItsLastWordHeard() {
        Attempt attempt = new Attempt(1, 1, 1, s(1), s(7), false, List.of(heard(2, 2, 3)), List.of());
        assertThat(times(SaidWords.of(WORDS, attempt))).containsExactly("Every 1.0-2.0", "wheel 2.0-3.0");
    }

    private static String said(String line, Deviation deviation) {
        List<ScriptWord> words = Scripts.of(line).lines().get(0).words();
        Attempt attempt = new Attempt(1, 1, 1, s(1), s(7), true, List.of(heard(1, 1, 2)), List.of(deviation));
        return new SpokenLine(1, SaidWords.of(words, attempt)).text();
    }

    private static Deviation swapped(int word, String written, String said) {
        return new Deviation(word, written, said, Deviation.Kind.SWAPPED, 0.9);
    }

    private static Deviation dropped(int word) {
        return new Deviation(word, "", "", Deviation.Kind.DROPPED, 0.9);
    }

    private static Deviation added(int word, String said) {
        return new Deviation(word, "", said, Deviation.Kind.ADDED, 0.9);
    }

    private static WordTime heard(int word, double start, double end) {
        return new WordTime(word, s(start), s(end));
    }

    private static List<String> spread(WordTime... heard) {
        Attempt attempt = new Attempt(1, 1, 1, s(1), s(7), true, Arrays.asList(heard), List.of());
        return times(SaidWords.spread(WORDS, attempt));
    }

    private static List<String> times(List<TimedWord> words) {
        return words.stream()
                .map(word -> word.text() + " " + word.start().seconds() + "-"
                        + word.end().seconds())
                .toList();
    }
}
