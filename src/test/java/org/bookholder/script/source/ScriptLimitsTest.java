package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.Locale;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;

/** What is far larger than any script is refused before it costs much; what is merely large is read. */
final class ScriptLimitsTest {
    private static final String SPLIT = "split it into lessons";

    @Test
    void aTextOverItsLimitIsRefused() {
        String text = "Hello.\n".repeat(100_000);
        assertThat(problem(text)).hasMessage("l.md: the script is too long (over 600,000 characters); " + SPLIT);
    }

    @Test
    void aLineOfTenMegabytesIsRefused() {
        assertThat(problem("word and ".repeat(1_100_000)).what()).startsWith("the script is too long");
        assertThat(problem("Hi.\n" + "word and ".repeat(6_000)))
                .hasMessage("l.md:2: this line is too long (over 50,000 characters);"
                        + " write each paragraph on a line of its own");
    }

    @Test
    void aTextWithoutSpacesIsRefused() {
        assertThat(problem("x".repeat(100_000)).where()).isEqualTo("l.md:1");
        assertThat(problem("Hi.\n\nSee " + "x".repeat(501)))
                .hasMessage("l.md:3: a word is too long (over 500 characters without a space): 'See " + "x".repeat(35)
                        + "\u2026'; put spaces between its words, or take it out");
        assertThat(problem("> " + "x".repeat(501)).what()).startsWith("a word is too long");
        assertThat(problem("[Hi](say:" + "x".repeat(501) + ")").what()).startsWith("a word is too long");
    }

    @Test
    void longWordsBehindANameAndAmountsInManyUnitsCostLittle() throws ProblemException {
        assertThat(markdown("Hi.\n\nAuthor: " + ("x".repeat(300) + " ").repeat(30))
                        .lines())
                .hasSize(2);
        assertThat(markdown("Take " + "5 kg/".repeat(4_000) + "5 kg.").lines()).hasSize(1);
    }

    @Test
    void tooManyWordsAreRefused() {
        assertThat(problem("a b c d e f g h i j.\n".repeat(6_001)))
                .hasMessage("l.md:6001: the script is too long (over 60,000 words); " + SPLIT);
    }

    @Test
    void aTitleThatWouldFillAPageIsRefused() {
        String remedy = ": the title is too long (over 300 characters); shorten it";
        assertThat(problem("---\ntitle: " + "long ".repeat(80) + "\n---\nHi.")).hasMessage("l.md:2" + remedy);
        assertThat(problem("# " + "long ".repeat(80) + "\n\nHi.")).hasMessage("l.md:1" + remedy);
    }

    @Test
    void settingsThatAreNestedThousandsDeepAreRefused() {
        for (String deep : new String[] {"[".repeat(9_000), "{a: ".repeat(9_000), "- ".repeat(9_000)}) {
            assertThat(problem("---\ntitle: x\nmore:\n  " + deep + "\n---\nHi.").what())
                    .isEqualTo("the front matter can't be read (lists and names are nested too deeply)");
        }
    }

    @Test
    void settingsThatRepeatEachOtherAreNotUnfolded() throws ProblemException {
        assertThat(markdown("---\n" + repeating(20) + "---\nHi.").title()).isEqualTo("l");
        assertThat(problem("---\n" + repeating(20) + "title: *a20\n---\nHi.").what())
                .isEqualTo("'title' has no single value");
        assertThat(problem("---\n" + repeating(40) + "---\nHi.").what()).isEqualTo("the front matter can't be read");
    }

    /** Lists, each of which is the one before twice. */
    private static String repeating(int levels) {
        StringBuilder text = new StringBuilder("a0: &a0 [x, x]\n");
        for (int i = 1; i <= levels; i++) {
            text.append(String.format(Locale.ROOT, "a%d: &a%d [*a%d, *a%d]\n", i, i, i - 1, i - 1));
        }
        return text.toString();
    }

    @Test
    void markUpThatIsNestedThousandsDeepIsReadAsFarAsItGoes() throws ProblemException {
        assertThat(markdown("> ".repeat(9_000) + "Smile.\n\nHello.").lines()).hasSize(1);
        assertThat(markdown("*a **b ".repeat(5_000) + "c** d* ".repeat(1_000) + ".")
                        .lines())
                .isNotEmpty();
        assertThat(markdown("[".repeat(400) + " a.").lines()).hasSize(1);
    }

    @Test
    void aLargeScriptIsRead() throws ProblemException {
        Script script = markdown(("The garden is green and we walk along it now. ".repeat(20) + "\n").repeat(250));
        assertThat(script.lines()).hasSize(5_000);
    }

    @Test
    void writingThatNeedsNoSpacesIsRead() throws ProblemException {
        assertThat(markdown("\u4f60\u597d".repeat(400) + "\n\nHello.").elements())
                .hasSize(2);
    }

    private static Script markdown(String text) throws ProblemException {
        return ScriptReader.parse(text, "l.md", Format.MARKDOWN);
    }

    private static ProblemException problem(String text) {
        return catchThrowableOfType(ProblemException.class, () -> markdown(text));
    }
}
