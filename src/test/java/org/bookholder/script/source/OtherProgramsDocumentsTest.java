package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Documents that other programs made of six texts: pandoc 2.17 and LibreOffice 7.4, from Debian 12. The second opinion is what these
 * programs themselves write as plain text, kept beside the documents.
 */
class OtherProgramsDocumentsTest {
    private static final Path FOLDER = Path.of("src/test/resources/documents");
    private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}]+");

    static Stream<String> documents() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files
                    .map(file -> String.valueOf(file.getFileName()))
                    .filter(name -> !name.endsWith(".txt") && !name.endsWith(".md"))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    private record Taken(ExplainedScript read, List<LeftOut> leftOut) {
        Stream<String> all() {
            return Stream.of(
                            Stream.of(read.script().title()),
                            read.script().elements().stream().map(element -> element.text()),
                            leftOut.stream().map(LeftOut::what),
                            read.leftOut().stream().map(LeftOut::what))
                    .flatMap(texts -> texts);
        }
    }

    private static Taken take(String name) throws ProblemException {
        ConvertedDocument document = ScriptReader.convert(FOLDER.resolve(name));
        return new Taken(ScriptReader.explain(document.text(), name, Format.of(name)), document.leftOut());
    }

    private static List<String> words(Stream<String> texts) {
        return texts.flatMap(text -> WORD.matcher(Normalizer.normalize(text, Normalizer.Form.NFKC))
                        .results()
                        .map(MatchResult::group))
                .map(word -> word.toLowerCase(Locale.ROOT))
                .toList();
    }

    private static String plainText(String name) {
        String own = name.replaceFirst("\\.[a-z]+$", ".txt");
        try {
            return Files.readString(FOLDER.resolve(own)).replace("\ufeff", "");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Each word of the document is read, shown, or left out with a reason. */
    @ParameterizedTest
    @MethodSource("documents")
    void nothingOfADocumentIsUnexplained(String name) throws ProblemException {
        Taken taken = take(name);
        String plain = plainText(name);
        // of notes in a DOCX document only the count is said
        boolean counted = taken.leftOut().stream().anyMatch(left -> left.what().equals("1 footnote"));
        plain = counted ? plain.replaceAll("(?m)^\\[1] .*$", "") : plain;
        List<String> left = new ArrayList<>(words(Stream.of(plain.replaceAll("\\[\\d+]", " "))));
        words(taken.all()).forEach(left::remove);
        assertThat(left).isEmpty();
    }

    /** Only numbers of lists and marks of notes may be there without being part of the plain text, or written otherwise. */
    @ParameterizedTest
    @MethodSource("documents")
    void nothingIsReadThatIsNotThere(String name) throws ProblemException {
        List<String> taken = new ArrayList<>(
                words(take(name).read().script().elements().stream().map(element -> element.text())));
        words(Stream.of(plainText(name))).forEach(taken::remove);
        assertThat(taken).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("documents")
    void listsCountAsTheyAreWritten(String name) throws ProblemException {
        if (!name.contains("lists") && !name.contains("kettle")) {
            return;
        }
        List<String> items = lines(name).stream()
                .filter(line -> line.matches("\\d+\\. .*"))
                .map(line -> line.replaceAll("^(\\d+\\. \\w+) .*", "$1"))
                .toList();
        assertThat(items)
                .isEqualTo(
                        name.contains("lists")
                                ? List.of("1. The", "2. The", "1. Hold", "2. Keep", "3. The", "1. Push", "2. Turn")
                                : List.of("1. Let", "2. Unscrew", "3. Take", "1. Put", "2. Close"));
    }

    private static List<String> lines(String name) throws ProblemException {
        return take(name).read().script().lines().stream().map(ScriptLine::text).toList();
    }

    @ParameterizedTest
    @MethodSource("documents")
    void speakersAndRemarksAreFoundInEveryFormat(String name) throws ProblemException {
        if (!name.contains("talk")) {
            return;
        }
        assertThat(lines(name)).contains("Welcome to the workshop.", "Let us begin.");
        assertThat(take(name).read().script().elements().stream()
                        .filter(Direction.class::isInstance)
                        .map(element -> element.text()))
                .contains("HOST", "GUEST", "Wave at the camera", "beat", "Both look at the radio");
    }

    @Test
    void thereAreThirtyOfThem() throws IOException {
        assertThat(documents().map(name -> name.replaceAll(".*\\.", "")).distinct())
                .containsExactlyInAnyOrder("docx", "odt", "rtf", "html", "pdf");
        assertThat(documents().filter(Objects::nonNull).count()).isGreaterThanOrEqualTo(30);
    }
}
