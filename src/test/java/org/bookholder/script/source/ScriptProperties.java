package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import com.ibm.icu.text.RuleBasedNumberFormat;
import com.ibm.icu.util.ULocale;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.normalize.NumberWords;
import org.bookholder.script.normalize.TextNormalizer;
import org.bookholder.script.normalize.Typography;
import org.bookholder.script.source.ScriptReader.Format;

final class ScriptProperties {
    private final RuleBasedNumberFormat icu =
            new RuleBasedNumberFormat(ULocale.ENGLISH, RuleBasedNumberFormat.SPELLOUT);

    @Property(tries = 300)
    void anyTextIsAScriptOrAProblem(@ForAll String text, @ForAll Format format) {
        parse(text, format).ifPresent(ScriptProperties::assertSpeakable);
    }

    @Property(tries = 300)
    void anyMixOfSignsIsAScriptOrAProblem(@ForAll("signs") String text, @ForAll Format format) {
        parse(text, format).ifPresent(ScriptProperties::assertSpeakable);
    }

    @Property(tries = 300)
    void nothingIsLostFromPlainText(@ForAll("signs") String text) {
        // speakers' names are shown once, brackets of directions never
        String body = "a" + text.replace('[', '(').replaceAll(":(?=\\s|$)", ";");
        parse(body, Format.PLAIN_TEXT).ifPresent(script -> {
            StringBuilder written = new StringBuilder();
            script.elements()
                    .forEach(e -> written.append(e instanceof ScriptLine line ? line.text() : ((Direction) e).text()));
            assertThat(bare(written.toString())).isEqualTo(bare(spokenRows(body)));
        });
    }

    @Property(tries = 300)
    void numbersAreSpelledAsIcuDoes(@ForAll @IntRange(max = Integer.MAX_VALUE) int n) {
        String expected = icu.format(n).replace('-', ' ');
        assertThat(String.join(" ", new NumberWords().cardinal(n).first())).isEqualTo(expected);
    }

    @Provide
    Arbitrary<String> signs() {
        return Arbitraries.of(
                        "a", "Bee", "USB", "'", "’", "\"", "-", "—", "–", "...", "…", ".", ",", " ", " ", " ", "\n",
                        "1", "25", "2019", "3.5", "$", "£", "%", "/", "½", "°C", "kg", "pm", ":", "st", "s", "July",
                        "No.", "#", "@", "&", "(", ")", "[", "](say:", "*", "_", "`", "é", "道", "🎉", "\u00a0", "Dr.",
                        "e.g.", "IV", "x", "<!--", "-->", "> ", "# ")
                .list()
                .ofMaxSize(14)
                .map(parts -> String.join("", parts));
    }

    private static Optional<Script> parse(String text, Format format) {
        try {
            return Optional.of(ScriptReader.parse(text, "x.md", format));
        } catch (ProblemException e) {
            assertThat(e.where()).startsWith("x.md:");
            return Optional.empty();
        }
    }

    private static void assertSpeakable(Script script) {
        assertThat(script.lines()).isNotEmpty();
        for (ScriptLine line : script.lines()) {
            for (ScriptWord word : line.words()) {
                assertThat(word.spoken())
                        .isNotEmpty()
                        .allSatisfy(form -> assertThat(form)
                                .isNotEmpty()
                                .allMatch(token -> token.matches("[\\p{L}\\p{M}']*\\p{L}[\\p{L}\\p{M}']*"))
                                .allMatch(token -> token.equals(Typography.lower(token))));
            }
        }
    }

    /** The rows in which something is said; rows of signs alone, also beside a picture, are left out and named. */
    private static String spokenRows(String text) {
        WordSplitter splitter = new WordSplitter(TextNormalizer.of("en-US"));
        StringBuilder rows = new StringBuilder();
        for (String row : text.split("\n", -1)) {
            rows.append(splitter.says(row) || row.codePoints().anyMatch(Character::isIdeographic) ? row : "");
        }
        return rows.toString();
    }

    private static String bare(String text) {
        return text.replaceAll("[\\s\\u00a0()\\[\\]\\u2022-]|\ud83c\udf89", "");
    }
}
