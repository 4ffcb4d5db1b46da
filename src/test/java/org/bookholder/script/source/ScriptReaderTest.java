package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.script.model.ScriptSettings.LineBreaks;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.model.ScriptWord.Emphasis;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class ScriptReaderTest {
    private static final String LESSON = """
        ---
        title: Choosing your first hive
        pace: 105
        language: en-GB
        layout: lesson
        ---
        Spring is when a hive decides. It stays or it goes.
        Buy [12](say:a dozen) frames, not [2,500](say:two and a half thousand).

        > Hold up the frame,
        > turn it to the window.

        ## The *second* part

        It is *very* **calm** today.
        """;

    @Test
    void readsSettings() throws ProblemException {
        Script script = markdown(LESSON);
        assertThat(script.title()).isEqualTo("Choosing your first hive");
        assertThat(script.settings())
                .isEqualTo(new ScriptSettings(105, "en-GB", LineBreaks.SENTENCES, ScriptSettings.Wording.FREE));
    }

    @Test
    void numbersLinesAndKeepsTheirPlaceInTheSource() throws ProblemException {
        assertThat(dump(markdown(LESSON)))
                .containsExactly(
                        "1 @7 p0: Spring is when a hive decides.",
                        "2 @7 p0: It stays or it goes.",
                        "3 @8 p0: Buy 12 frames, not 2,500.",
                        "- @10 p1: Hold up the frame, turn it to the window.",
                        "- @13 p2: The second part",
                        "4 @15 p3: It is very calm today.");
    }

    @Test
    void takesTheSpokenFormFromTheAuthor() throws ProblemException {
        List<ScriptWord> words = markdown(LESSON).lines().get(2).words();
        assertThat(words.get(1).spoken()).containsExactly(List.of("a", "dozen"));
        assertThat(words.get(4).written()).isEqualTo("2,500.");
        assertThat(words.get(4).spoken()).containsExactly(List.of("two", "and", "a", "half", "thousand"));
    }

    @Test
    void takesOneSpokenFormForSeveralWords() throws ProblemException {
        List<ScriptWord> words = markdown("Ask [Prof. Dr. Hill](say:Anna (our guest))'s dog.")
                .lines()
                .get(0)
                .words();
        assertThat(words.get(1).written()).isEqualTo("Prof. Dr. Hill's");
        assertThat(words.get(1).spoken()).containsExactly(List.of("anna", "our", "guest's"));
    }

    @Test
    void readsOtherLinksByTheirText() throws ProblemException {
        assertThat(dump(markdown("See [the page](https://example.org) and [this](see:that).")))
                .containsExactly("1 @1 p0: See the page and this.");
    }

    @Test
    void keepsEmphasisWordByWord() throws ProblemException {
        List<ScriptWord> words = markdown(LESSON).lines().get(3).words();
        assertThat(words.stream().map(ScriptWord::emphasis))
                .containsExactly(Emphasis.NONE, Emphasis.NONE, Emphasis.LIGHT, Emphasis.STRONG, Emphasis.NONE);
    }

    @Test
    void takesTheFirstHeadingAsTitle() throws ProblemException {
        Script script = markdown("# A hive\n\nSpeak.\n\n# Later\n\nMore.");
        assertThat(script.title()).isEqualTo("A hive");
        assertThat(dump(script)).containsExactly("1 @3 p0: Speak.", "- @5 p1: Later", "2 @7 p2: More.");
    }

    @Test
    void usesTheFileNameAsTitleIfThereIsNoOther() throws ProblemException {
        assertThat(ScriptReader.parse("Speak.", "course/03 the hive.md", Format.MARKDOWN)
                        .title())
                .isEqualTo("03 the hive");
    }

    @Test
    void showsPicturesCommentsAndCodeWithoutSpeakingThem() throws ProblemException {
        String text = """
            Look ![a frame](frame.png) here.<!-- slowly -->

            <!-- change
            the camera -->

            ```
            int x;
            ```

            Run `git status` now.
            """;
        assertThat(dump(markdown(text)))
                .containsExactly(
                        "1 @1 p0: Look here.",
                        "- @1 p0: a frame",
                        "- @1 p0: slowly",
                        "- @3 p1: change the camera",
                        "- @6 p2: int x;",
                        "2 @10 p3: Run git status now.");
    }

    @Test
    void speaksTheItemsOfAList() throws ProblemException {
        assertThat(dump(markdown("You need:\n\n1. a hive\n2. a smoker\n   - with fuel\n\nThat is all.")))
                .containsExactly(
                        "1 @1 p0: You need:",
                        "2 @3 p1: 1. a hive",
                        "3 @4 p2: 2. a smoker",
                        "4 @5 p3: • with fuel",
                        "5 @7 p4: That is all.");
    }

    @Test
    void leavesSourceLinesWholeIfAsked() throws ProblemException {
        assertThat(dump(markdown("---\nlines: as-written\n---\nOne. Two.\nThree.")))
                .containsExactly("1 @4 p0: One. Two.", "2 @5 p0: Three.");
    }

    @Test
    void readsPlainText() throws ProblemException {
        Script script =
                ScriptReader.parse("One *two*. Three.\r\n\r\n[turn the page]\r\n- Four", "x.txt", Format.PLAIN_TEXT);
        assertThat(dump(script))
                .containsExactly("1 @1 p0: One *two*.", "2 @1 p0: Three.", "- @3 p1: turn the page", "3 @4 p2: • Four");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Changing a tube\n===============\n\nLet the air out.",
                "Title: Changing a tube\n\nLet the air out.",
                "Changing a tube\n---\nLet the air out."
            })
    void aTitleOfPlainTextMayBeUnderlinedOrNamed(String text) throws ProblemException {
        Script script = ScriptReader.parse(text, "x.txt", Format.PLAIN_TEXT);
        assertThat(script.title()).isEqualTo("Changing a tube");
        assertThat(script.lines()).extracting(ScriptLine::text).containsExactly("Let the air out.");
    }

    @Test
    void aSentenceAboveARowOfSignsIsNoTitle() throws ProblemException {
        assertThat(dump(ScriptReader.parse("Welcome back.\n---\nLet it out.", "x.txt", Format.PLAIN_TEXT)))
                .containsExactly("1 @1 p0: Welcome back.", "2 @3 p1: Let it out.");
    }

    @Test
    void aRowOfSignsIsLeftOutOfPlainText() throws ProblemException {
        ExplainedScript read = ScriptReader.explain("One.\n\n* * *\n\n----\n\nTwo.", "x.txt", Format.PLAIN_TEXT);
        assertThat(dump(read.script())).containsExactly("1 @1 p0: One.", "2 @7 p1: Two.");
        assertThat(read.leftOut()).extracting(LeftOut::what).containsExactly("* * *", "----");
    }

    @ParameterizedTest
    @CsvSource({"english, en", "German, de", "Deutsch, de", "en_GB, en-GB", "pt-BR, pt-BR"})
    void aLanguageMayBeNamed(String written, String tag) throws ProblemException {
        assertThat(markdown("---\nlanguage: " + written + "\n---\nOne.")
                        .settings()
                        .language())
                .isEqualTo(tag);
    }

    @Test
    void attachesSeparatePunctuationToTheWordBefore() throws ProblemException {
        ScriptLine line = markdown("Wait — no ... really ✓").lines().get(0);
        assertThat(line.words().stream().map(ScriptWord::written)).containsExactly("Wait —", "no ...", "really ✓");
    }

    @Test
    void splitsWordsAtADash() throws ProblemException {
        ScriptLine line = markdown("Wait—what…now").lines().get(0);
        assertThat(line.words().stream().map(ScriptWord::written)).containsExactly("Wait—", "what…", "now");
    }

    @Test
    void readsTextInAnotherWritingSystem() throws ProblemException {
        Script script = markdown("Привет мир. Как дела?\n\n你好。再见。");
        assertThat(dump(script))
                .containsExactly("1 @1 p0: Привет мир.", "2 @1 p0: Как дела?", "3 @3 p1: 你好。", "4 @3 p1: 再见。");
        assertThat(script.lines().get(0).words().get(0).spoken()).containsExactly(List.of("привет"));
    }

    @Test
    void readsFilesInUtf8AndUtf16(@TempDir Path folder) throws IOException, ProblemException {
        Path utf8 = Files.writeString(folder.resolve("a.MD"), "\ufeff# Café\n\nHello.", StandardCharsets.UTF_8);
        Path utf16 = Files.write(folder.resolve("b.txt"), "\ufeffHello.".getBytes(StandardCharsets.UTF_16LE));
        assertThat(ScriptReader.read(utf8).title()).isEqualTo("Café");
        assertThat(ScriptReader.read(utf16).lines()).hasSize(1);
        assertThat(ScriptReader.read(utf16).title()).isEqualTo("b");
        assertThat(ScriptReader.read(utf16).source()).isEqualTo(utf16.toString());
    }

    @Test
    void readsALineOfTwoThousandWords() throws ProblemException {
        assertThat(markdown("bees fly ".repeat(1000)).lines())
                .singleElement()
                .satisfies(line -> assertThat(line.words()).hasSize(2000));
    }

    @Test
    void readsAScriptOfFiftyThousandWords() throws ProblemException {
        Script script = markdown("The bees fly on July 25, 2012. They cost $20.50 each.\n\n".repeat(5000));
        assertThat(script.lines()).hasSize(10000);
        assertThat(script.lines().get(9999).text()).isEqualTo("They cost $20.50 each.");
    }

    @Test
    void readsAScriptOfOnlyNumbers() throws ProblemException {
        assertThat(markdown("12 7\n2019\n").lines()).hasSize(2);
    }

    private static Script markdown(String text) throws ProblemException {
        return ScriptReader.parse(text, "lesson.md", Format.MARKDOWN);
    }

    private static List<String> dump(Script script) {
        return script.elements().stream().map(ScriptReaderTest::dump).toList();
    }

    private static String dump(ScriptElement element) {
        String place = " @" + element.sourceLine() + " p" + element.paragraph() + ": ";
        return element instanceof ScriptLine line
                ? line.number() + place + line.text()
                : "-" + place + ((Direction) element).text();
    }
}
