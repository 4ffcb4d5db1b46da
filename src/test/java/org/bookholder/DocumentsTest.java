package org.bookholder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.bookholder.view.input.KeyGuide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Holds the written guides to what they describe. */
final class DocumentsTest {
    @Test
    void theGuideListsThePackagesInReadingOrder() throws IOException {
        assertThat(found(read("DEVELOPERS.md"), "(?m)^\\| `([a-z]+)` \\| ")).isEqualTo(ArchitectureTest.PIPELINE);
    }

    @Test
    void theFirstDecisionNamesTheReadingOrder() throws IOException {
        assertThat(read("docs/decisions/0001-reading-order.md").replaceAll("\\s+", " "))
                .contains("`" + String.join(", ", ArchitectureTest.PIPELINE) + "`");
    }

    @Test
    void theGuideListsTheKeysOfTheReadingWindow() throws IOException {
        String keys =
                read("README.md").split("### Keys in the reading window", -1)[1].split("\n## ", -1)[0];
        List<String> entries = KeyGuide.entries().stream()
                .map(entry -> "| " + entry.keys() + " | " + entry.does() + " |")
                .toList();

        assertThat(found(keys, "(?m)^(\\| (?!key |-)[^|]+ \\| [^|]+ \\|)$")).isEqualTo(entries);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "README.md",
                "DEVELOPERS.md",
                "docs/accuracy.md",
                "docs/window.md",
                "demo-scripts/README.md",
                "models/README.md"
            })
    void linksLeadSomewhere(String guide) throws IOException {
        Path folder = Path.of(guide).toAbsolutePath().getParent();
        assertThat(found(read(guide), "\\]\\((?!say:|check:|http|#)([^)#]+)\\)"))
                .allSatisfy(link -> assertThat(folder.resolve(link)).exists());
    }

    @Test
    void everyDecisionNamesWhatConfirmsIt() throws IOException {
        try (var notes = Files.list(Path.of("docs/decisions"))) {
            assertThat(notes.filter(note -> note.getFileName().toString().matches("\\d{4}-.*\\.md")))
                    .isNotEmpty()
                    .allSatisfy(note ->
                            assertThat(note).content(StandardCharsets.UTF_8).contains("Confirmation"));
        }
    }

    private static String read(String file) throws IOException {
        return Files.readString(Path.of(file), StandardCharsets.UTF_8);
    }

    private static List<String> found(String text, String pattern) {
        return Pattern.compile(pattern)
                .matcher(text)
                .results()
                .map((MatchResult result) -> result.group(1))
                .toList();
    }
}
