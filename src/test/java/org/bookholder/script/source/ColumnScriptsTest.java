package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.source.ScriptReader.Format;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Eleven scripts in two or three columns, in the style of training films of public services (US Army Signal Center, subcourse SS0519,
 * Script Writing for Educational Visual Information Programs, 1988), each as a web page and as pandoc 2.17 and LibreOffice 7.4 from Debian
 * 12 made other documents of it. What is spoken of each stands beside it.
 */
class ColumnScriptsTest {
    private static final Path FOLDER = Path.of("src/test/resources/columns");
    private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}]+");

    static Stream<String> scripts() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files
                    .map(file -> String.valueOf(file.getFileName()))
                    .filter(name -> !name.endsWith(".spoken"))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    @Test
    void aTableOfAPdfIsToldAsFoundByWhereItsWordsStand() throws Exception {
        for (String name : List.of("no-heading-lo.pdf", "audio-first-lo.pdf")) {
            assertThat(read(name).leftOut).extracting(LeftOut::what).contains("a table");
        }
        assertThat(ScriptReader.convert(Path.of("src/test/resources/documents/lo-letters.pdf"))
                        .leftOut())
                .extracting(LeftOut::what)
                .doesNotContain("a table");
    }

    @ParameterizedTest
    @MethodSource("scripts")
    void whatIsSpokenIsReadAndNothingElse(String name) throws Exception {
        ExplainedScript read = read(name).script;

        List<String> lines = read.script().lines().stream()
                .map(ScriptLine::text)
                .map(text -> text.replaceFirst("^• ", ""))
                .toList();
        assertThat(lines).isEqualTo(Files.readAllLines(FOLDER.resolve(base(name) + ".spoken")));
    }

    @ParameterizedTest
    @MethodSource("scripts")
    void everyWordIsReadOrShownOrLeftOutWithAReason(String name) throws Exception {
        Read read = read(name);
        Stream<String> told = Stream.of(
                        Stream.of(read.script.script().title()),
                        read.script.script().elements().stream().map(ScriptElement::text),
                        Stream.concat(read.leftOut.stream(), read.script.leftOut().stream())
                                .map(LeftOut::what))
                .flatMap(texts -> texts);
        List<String> left =
                new ArrayList<>(words(Stream.of(Jsoup.parse(Files.readString(FOLDER.resolve(base(name) + ".html")))
                        .body()
                        .text())));

        words(told).forEach(left::remove);

        // of a speaker's label only the first is shown, and numbers of lists are not part of a page's text
        assertThat(left).isSubsetOf("narrator", "host");
    }

    private record Read(ExplainedScript script, List<LeftOut> leftOut) {}

    private static Read read(String name) throws ProblemException {
        ConvertedDocument document = ScriptReader.convert(FOLDER.resolve(name));
        return new Read(ScriptReader.explain(document.text(), name, Format.of(name)), document.leftOut());
    }

    private static String base(String name) {
        return name.replaceFirst("(-pandoc|-lo)?\\.[a-z]+$", "");
    }

    private static List<String> words(Stream<String> texts) {
        return texts.flatMap(text -> WORD.matcher(Normalizer.normalize(text, Normalizer.Form.NFKC))
                        .results())
                .map(MatchResult::group)
                .map(word -> word.toLowerCase(Locale.ROOT))
                .toList();
    }
}
