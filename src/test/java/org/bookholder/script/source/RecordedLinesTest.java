package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.AgeingFact;
import org.bookholder.script.model.Cover;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;

/** What was read keeps its lines, however a later version divides the same text. */
final class RecordedLinesTest {
    private static final String TEXT = """
            # One wheel

            ## The rim

            Take the wheel out. Lay it flat.

            [Hold up the rim]

            It costs [$12](check:2027-03) or $2.5 million, they say. ![the hub](hub.jpg) Look at the hub.
            """;

    @Test
    void aTextThatIsStillDividedSoIsTheSame() throws ProblemException {
        Script today = script(TEXT);
        assertThat(RecordedLines.of(today).in(today)).isSameAs(today);
        assertThat(RecordedLines.UNKNOWN.in(today)).isSameAs(today);
    }

    @Test
    void linesThatWereOneStayOne() throws ProblemException {
        Script today = script(TEXT);
        Script then = lines(
                        "Take the wheel out. Lay it flat.", "It costs $12 or|$2.5 million,|they say. Look at the hub.")
                .in(today);
        assertThat(then.elements().stream().map(ScriptElement::text))
                .containsExactly(
                        "The rim",
                        "Take the wheel out. Lay it flat.",
                        "Hold up the rim",
                        "It costs $12 or $2.5 million, they say. Look at the hub.",
                        "the hub");
        assertThat(then.lines()).extracting(ScriptLine::number).containsExactly(1, 2);
        assertThat(word(then, 2, 5).spoken()).isEqualTo(word(today, 3, 5).spoken());
        assertThat(then.facts()).extracting(AgeingFact::line).containsExactly(2);
        assertThat(then.covers()).extracting(Cover::line, Cover::word).containsExactly(tuple(2, 8));
        assertThat(word(then, 2, 8).written()).isEqualTo("Look");
    }

    @Test
    void linesThatWereTwoStayTwo() throws ProblemException {
        Script then = lines(
                        "Take the",
                        "wheel out.",
                        "Lay it flat.",
                        "It costs $12 or|$2.5 million,|they say.",
                        "Look at the hub.")
                .in(script(TEXT));
        assertThat(then.lines().stream().map(ScriptLine::text)).startsWith("Take the", "wheel out.", "Lay it flat.");
        assertThat(then.facts()).extracting(AgeingFact::line).containsExactly(4);
    }

    @Test
    void aWordThatWasTwoKeepsItsPlaces() throws ProblemException {
        Script then = lines(
                        "Take the wheel out.",
                        "Lay it flat.",
                        "It costs $12 or|$2.5|million,|they say.",
                        "Look at the hub.")
                .in(script(TEXT));
        assertThat(then.lines().get(2).words()).hasSize(8);
        assertThat(word(then, 3, 6).spoken().get(0)).containsExactly("million");
        assertThat(word(then, 3, 7).written()).isEqualTo("they");
        assertThat(then.covers()).extracting(Cover::line).containsExactly(4);
    }

    @Test
    void whatWasSpokenOnceAndIsADirectionTodayStaysALine() throws ProblemException {
        Script then = lines(
                        "Take the wheel out.",
                        "Lay it flat.",
                        "[Hold up the rim]",
                        "It costs $12 or|$2.5 million,|they say.",
                        "Look at the hub.")
                .in(script(TEXT));
        assertThat(then.lines().get(2).text()).isEqualTo("[Hold up the rim]");
        assertThat(then.lines().get(2).words())
                .allSatisfy(word -> assertThat(word.spoken().get(0)).isNotEmpty());
        assertThat(then.facts()).extracting(AgeingFact::line).containsExactly(4);
        assertThat(then.covers()).extracting(Cover::line).containsExactly(5);
    }

    @Property(tries = 300)
    void anyDivisionIsKeptAndNoDirectionIsLost(
            @ForAll @Size(min = 1, max = 12) List<@IntRange(min = 1, max = 6) Integer> lengths)
            throws ProblemException {
        Script today = script(TEXT);
        List<String> words = today.lines().stream()
                .flatMap(line -> line.words().stream())
                .map(ScriptWord::written)
                .toList();
        List<List<String>> divided = new ArrayList<>();
        int from = 0;
        for (int length : lengths) {
            int to = Math.min(words.size(), from + length);
            if (to > from) {
                divided.add(words.subList(from, to));
            }
            from = to;
        }
        Script then = new RecordedLines(divided).in(today);
        assertThat(RecordedLines.of(then).words()).isEqualTo(divided);
        assertThat(then.elements().stream().filter(Direction.class::isInstance).map(ScriptElement::text))
                .containsExactly("The rim", "Hold up the rim", "the hub");
        assertThat(then.facts()).allMatch(fact -> fact.line() >= 1 && fact.line() <= divided.size());
        assertThat(then.covers())
                .allMatch(cover -> cover.line() >= 1
                        && cover.line() <= divided.size()
                        && cover.word()
                                <= then.lines().get(cover.line() - 1).words().size());
    }

    private static ScriptWord word(Script script, int line, int word) {
        return script.lines().get(line - 1).words().get(word - 1);
    }

    /** Lines of words between spaces; a bar is a space around words that are one. */
    private static RecordedLines lines(String... lines) {
        return new RecordedLines(Stream.of(lines)
                .map(line -> line.contains("|")
                        ? Stream.of(line.split("\\|", -1))
                                .flatMap(
                                        part -> part.startsWith("$") ? Stream.of(part) : Stream.of(part.split(" ", -1)))
                                .toList()
                        : List.of(line.split(" ", -1)))
                .toList());
    }

    private static Script script(String text) throws ProblemException {
        return ScriptReader.parse(text, "wheel.md", Format.MARKDOWN);
    }
}
