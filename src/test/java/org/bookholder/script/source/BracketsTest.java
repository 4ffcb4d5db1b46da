package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.TakenBracket;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Which brackets are read aloud; the list was written, from common practice, before the program was tried on it. */
class BracketsTest {
    private static Stream<String> list(String name) {
        try (InputStream in = Objects.requireNonNull(BracketsTest.class.getResourceAsStream("/script/" + name))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines().filter(line -> !line.isEmpty() && !line.startsWith("#")).toList().stream();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private static String spoken(String text, Format format) {
        try {
            return ScriptReader.parse("Here we go.\n\n" + text + "\n\nThere we are.\n", "l", format).elements().stream()
                    .filter(ScriptLine.class::isInstance)
                    .map(line -> line.text())
                    .collect(Collectors.joining(" "))
                    .replaceAll("\\s", "");
        } catch (ProblemException refused) {
            return refused.getMessage();
        }
    }

    private static List<String> wrong(String list, Format format) {
        return list(list)
                .filter(written -> {
                    String expected = "Here we go." + written.replaceAll("\\{[^}]*\\}", "") + "There we are.";
                    String text = written.replaceAll("[{}]", "");
                    return !spoken(text, format).equals(expected.replaceAll("\\s", ""));
                })
                .toList();
    }

    @ParameterizedTest
    @EnumSource(Format.class)
    void tellsThoseThatAreReadFromThoseThatAreNot(Format format) {
        assertThat(wrong("brackets.txt", format)).isEmpty();
        assertThat(wrong("brackets-unseen.txt", format)).isEmpty();
    }

    /** An editor's noun where a sentence needs one (The Chicago Manual of Style, 17th edition, 13.60), and remarks that look like it. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "They said [the team] was late. | true",
                "[The team] went on without it. | true",
                "When [Ann Lee] left, it rained. | true",
                "We took [the pilot's] seat. | true",
                "The plan of [the council] failed. | true",
                "[Students] were asked first. | true",
                "[The logo appears] and we start. | false",
                "[Smiling] and here we go. | false",
                "Turn it [the wheel] slowly. | false",
                "We wait [hold the shot] for it. | false",
                "It is [both smile] very good. | false",
                "So [cut here] is the end. | false",
                "And [show logo] said hello. | false",
                "It was for [both teams] to say. | true",
            })
    void aNounThatTheSentenceNeedsIsRead(String text, boolean read) throws ProblemException {
        assertThat(ScriptReader.explain(text, "l", Format.PLAIN_TEXT).brackets())
                .extracting(TakenBracket::read)
                .containsExactly(read);
    }

    @Test
    void eachBracketIsToldWithTheReason() throws ProblemException {
        ExplainedScript read = ScriptReader.explain("""
            [Hold up the wheel]

            Press [Enter] now [smile] and see f[0].
            """, "l", Format.MARKDOWN);

        assertThat(read.brackets())
                .extracting(TakenBracket::sourceLine, TakenBracket::text, TakenBracket::read, TakenBracket::alone)
                .containsExactly(
                        tuple(1, "[Hold up the wheel]", false, true),
                        tuple(3, "[Enter]", true, false),
                        tuple(3, "[smile]", false, false),
                        tuple(3, "[0]", true, false));
        assertThat(read.brackets()).noneMatch(bracket -> bracket.why().isEmpty());
    }

    /** As word processors write comments into plain text: marks in the text, and each comment's text behind it. */
    @ParameterizedTest
    @EnumSource(Format.class)
    void theTextsOfCommentsAreLeftOutAndNamed(Format format) throws ProblemException {
        ExplainedScript read = ScriptReader.explain("""
            The hive[a] is old. Others say so, too [7].

            [a]Is it?

            [7] A book on bees.
            """, "l", format);

        assertThat(read.script().lines())
                .extracting(ScriptLine::text)
                .containsExactly("The hive is old.", "Others say so, too.");
        assertThat(read.leftOut())
                .extracting(LeftOut::what)
                .containsExactly("[a]", "[7]", "[a]Is it?", "[7] A book on bees.");
    }

    /** Steps whose numbers stand in brackets are no notes. */
    @ParameterizedTest
    @EnumSource(Format.class)
    void aLineIsNoNoteIfItsMarkIsOnlyNamedBehindIt(Format format) throws ProblemException {
        assertThat(ScriptReader.parse("[1] Take the jar.\n\nGo back to [1] now.\n", "l", format)
                        .lines())
                .extracting(ScriptLine::text)
                .containsExactly("Take the jar.", "Go back to [1] now.");
    }

    /** Check boxes as in lists of Markdown, an index and a letter that begin a sentence. */
    @ParameterizedTest
    @EnumSource(Format.class)
    void aLineThatBeginsWithABracketIsNoNoteByThatAlone(Format format) throws ProblemException {
        ExplainedScript read = ScriptReader.explain("""
            - [x] Open the lid.
            - [x] Pour the water.

            The list f[0] is long.

            [0] is its first place.

            [a] is a vowel. We say it in "wave[a]".

            [a] is said as in father.
            """, "l", format);

        assertThat(read.script().lines())
                .extracting(ScriptLine::text)
                .containsExactly(
                        "• Open the lid.",
                        "• Pour the water.",
                        "The list f[0] is long.",
                        "[0] is its first place.",
                        "[a] is a vowel.",
                        "We say it in \"wave\".",
                        "[a] is said as in father.");
        assertThat(read.leftOut()).extracting(LeftOut::what).containsExactly("[x]", "[x]", "[a]");
    }

    /** "[0, 1)" is closed by its round bracket, not by a square one further on; ISO 80000-2, from memory. */
    @Test
    void aHalfOpenIntervalEndsAtItsRoundBracket() throws ProblemException {
        assertThat(ScriptReader.parse("Both [0, 1) and (0, 1] hold.", "l", Format.PLAIN_TEXT)
                        .lines())
                .extracting(ScriptLine::text)
                .containsExactly("Both [0, 1) and (0, 1] hold.");
    }

    /** What is held or used stands behind the bracket, so that it names nothing; common practice. */
    @ParameterizedTest
    @ValueSource(strings = {"Now hold [lift it] the cup.", "I use [smiling] this one.", "Open [slowly turn] the jar."})
    void aRemarkBetweenAVerbAndItsObjectIsNotRead(String text) throws ProblemException {
        assertThat(ScriptReader.parse(text, "l", Format.PLAIN_TEXT).lines())
                .extracting(ScriptLine::text)
                .containsExactly(text.replaceAll("\\[[^]]*\\] ", ""));
    }

    @Test
    void aBracketFarBehindInALongLineIsTakenAlike() throws ProblemException {
        String before = "We see " + "one and two ".repeat(100);
        ExplainedScript read = ScriptReader.explain(
                before + "and press [Enter] \"of [the day]\" now [smile] so.", "l", Format.PLAIN_TEXT);

        assertThat(read.brackets()).extracting(TakenBracket::read).containsExactly(true, true, false);
    }

    @Test
    void codeIsReadWhateverItLooksLike() throws ProblemException {
        assertThat(ScriptReader.parse("Run `say(\"why? Yes!\") [beat]` now.", "l", Format.MARKDOWN)
                        .lines())
                .extracting(ScriptLine::text)
                .containsExactly("Run say(\"why? Yes!\") [beat] now.");
    }

    /** Ways in which teachers of mathematics and of programming say them; from memory. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "We see f[0] here. | f[0] | f zero",
                "We see f[0] here. | f[0] | f of zero",
                "We see x[n] here. | x[n] | x sub n",
                "We see words[-1] here. | words[-1] | words minus one",
                "We see text[2:5] here. | text[2:5] | text two to five",
                "Look at [0, 1] here. | [0, 1] | zero to one",
                "Look at [-2, ∞) here. | [-2, ∞) | minus two to infinity",
                "Press [Ctrl]+[C] here. | [Ctrl]+[C] | control c",
                "Press [Esc] here. | [Esc] | escape",
                "See book[note] here. | book[note] | book note",
                "[T]he rule | [T]he | the",
                "It was call[ed] so. | call[ed] | called",
            })
    void aBracketIsSaidAsPeopleDo(String text, String word, String said) throws ProblemException {
        assertThat(ScriptReader.parse(text, "l", Format.PLAIN_TEXT)
                        .lines()
                        .get(0)
                        .words())
                .filteredOn(one -> one.written().equals(word))
                .singleElement()
                .satisfies(one -> assertThat(one.spoken()).contains(List.of(said.split(" ", -1))));
    }
}
