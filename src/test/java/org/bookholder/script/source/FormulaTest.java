package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Formulae between dollar signs: where they are as in Pandoc's manual, how they are said as in Chang's handbook, from memory. */
class FormulaTest {
    private static List<ScriptLine> lines(String text, Format format) throws ProblemException {
        return ScriptReader.parse(text, "l", format).lines();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "$x^2 + y^2$ | x squared plus y squared",
                "$\\alpha$ | alpha",
                "$n$th | nth",
                "$x$-axis | x axis",
                "$\\frac{1}{2}$ | one half",
                "$\\frac{a+b}{c}$ | a plus b over c",
                "$E = mc^2$ | e equals m c squared",
                "$\\sqrt{2}$ | the square root of two",
                "$\\sqrt{2}$ | root two",
                "$\\sqrt[3]{x}$ | the cube root of x",
                "$x_i$ | x sub i",
                "$a_1*b_1*c$ | a sub one times b sub one times c",
                "$f(x) = \\sin x$ | f of x equals sine x",
                "$n!$ | n factorial",
                "$x^n$ | x to the n",
                "$10^{-3}$ | ten to the minus three",
                "$\\sum_{i=1}^{n} i$ | the sum from i equals one to n of i",
                "$\\int_0^1 x\\,dx$ | the integral from zero to one of x d x",
                "$\\lim_{x \\to 0} f(x)$ | the limit as x approaches zero of f of x",
                "$90^\\circ$ | ninety degrees",
                "$a \\le b$ | a is less than or equal to b",
                "$-3$ | minus three",
                "$\\hat{x}$ | x hat",
                "$5\\,\\text{kg}$ | five kilograms",
            })
    void aFormulaIsSaidInWords(String written, String said) throws ProblemException {
        for (Format format : Format.values()) {
            List<ScriptWord> words =
                    lines("See " + written + ", then go.", format).get(0).words();
            assertThat(words).hasSize(4);
            assertThat(words.get(1).written()).isEqualTo(written + ",");
            assertThat(words.get(1).spoken()).contains(List.of(said.split(" ", -1)));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"It costs $5 and $10.", "Pay $20-$30.", "It is $20, not US$ or more.", "$5 to $6 (A$7)."})
    void amountsOfMoneyStayMoney(String text) throws ProblemException {
        assertThat(lines(text, Format.MARKDOWN).get(0).words())
                .flatExtracting(word -> word.spoken().get(0))
                .contains("dollars");
    }

    /** Variables of shells and of PHP, ranks of prices, and the end of a line in regular expressions; common practice. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "Add $a+$b here.",
                "Join $a.$b here.",
                "Write ${a}/${b} here.",
                "Look at $a[$i] here.",
                "They are $$ or $$$ there.",
                "Pay $20 (or **$x**) now.",
                "Match \"a+$\" and \"b{2}$\" now."
            })
    void dollarSignsOfProgramsAndPricesAreNoFormulae(String text) throws ProblemException {
        for (Format format : Format.values()) {
            ExplainedScript read = ScriptReader.explain(text, "l", format);
            assertThat(read.leftOut()).isEmpty();
            assertThat(read.script().lines().get(0).words().stream()
                            .filter(word -> word.written().contains("$")))
                    .isNotEmpty()
                    .allMatch(word -> word.spoken().get(0).contains("dollars"));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"$Na^+$s", "$v^2 = u^2 + 2as$", "$x = y+$"})
    void aFormulaMayEndInASignOrHoldLettersThatAreAWord(String formula) throws ProblemException {
        assertThat(lines("See " + formula + " now.", Format.MARKDOWN).get(0).words())
                .hasSize(3)
                .noneMatch(word -> word.spoken().get(0).contains("dollars"));
    }

    /** What no rule says is shown, named with what to do, and never called dollars. */
    @ParameterizedTest
    @EnumSource(Format.class)
    void aFormulaThatNobodyReadsOutIsNamed(Format format) throws ProblemException {
        ExplainedScript read = ScriptReader.explain(
                "Use $\\begin{x}a&b$ now.\n\n$$\\oint F$$\n\nSee [$\\oint$](say:the ring).\n", "l", format);

        assertThat(read.leftOut()).extracting(LeftOut::what).containsExactly("$\\begin{x}a&b$", "$$\\oint F$$");
        assertThat(read.leftOut()).allMatch(left -> left.why().contains("write how you say it"));
        assertThat(read.script().elements())
                .filteredOn(Direction.class::isInstance)
                .extracting(element -> element.text())
                .containsExactly("$$\\oint F$$");
        assertThat(read.script().lines().get(1).words().get(1).spoken()).containsExactly(List.of("the", "ring"));
        assertThat(read.script().lines())
                .flatExtracting(ScriptLine::words)
                .noneMatch(word -> word.spoken().stream().anyMatch(form -> form.contains("dollars")));
    }

    @Test
    void aFormulaOfItsOwnMayLieOverSeveralLines() throws ProblemException {
        assertThat(lines("So:\n\n$$\nx^2 = 4\n$$\n\nYes.", Format.MARKDOWN)
                        .get(1)
                        .words())
                .singleElement()
                .satisfies(word -> assertThat(word.spoken()).contains(List.of("x", "squared", "equals", "four")));
    }

    /** LaTeX's own brackets; common practice. */
    @ParameterizedTest
    @EnumSource(Format.class)
    void aFormulaMayStandBetweenLatexBrackets(Format format) throws ProblemException {
        String text = "So \\(x^2\\) and $$ y = 4 $$ in a row.\n\n\\[\nx = \\frac{1}{2}\n\\]\n\nNow \\(n\\) is it.\n";

        List<ScriptLine> lines = lines(text, format);

        assertThat(lines).hasSize(3);
        assertThat(lines.get(0).words().get(1).spoken()).contains(List.of("x", "squared"));
        assertThat(lines.get(0).words().get(3).spoken()).contains(List.of("y", "equals", "four"));
        assertThat(lines.get(1).words())
                .singleElement()
                .satisfies(word -> assertThat(word.spoken()).contains(List.of("x", "equals", "one", "half")));
        assertThat(lines.get(2).words().get(1).spoken()).contains(List.of("n"));
        assertThat(WordParagraph.escaped("so \\(x^2\\) is")).isEqualTo("so $x^2$ is");
    }

    /** CommonMark, "Backslash escapes": these are plain brackets. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "It is \\(see below\\) fine.",
                "\\(a\\) the first",
                "Press \\[Enter\\] now.",
                "Tell \\(him\\) now.",
                "Take it \\(e.g. one\\) and go.",
                "The value a\\[i_1\\] is it.",
                "So \\[ a - b \\] stays.",
                "The name \\(my_file\\) is long.",
                "\\[x = 1\\] is one."
            })
    void plainBracketsAreNoFormulae(String text) {
        assertThat(TexBrackets.inDollars(text)).isEqualTo(text);
    }

    @Test
    void aFormulaInADocumentKeepsItsSigns() {
        assertThat(WordParagraph.escaped("*a* $x_1 * y$ and [x_1](say:so) for $5 and $10_"))
                .isEqualTo("\\*a\\* $x_1 * y$ and [x_1](say:so) for $5 and $10\\_");
    }
}
