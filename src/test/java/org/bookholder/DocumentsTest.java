package org.bookholder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.bookholder.view.input.KeyGuide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Checks that the written guides match what they describe. */
final class DocumentsTest {
    @Test
    void theGuideListsThePackagesInReadingOrder() throws IOException {
        assertThat(found(packages(), "(?m)^\\| `([a-z]+)` \\| ")).isEqualTo(ArchitectureTest.PIPELINE);
    }

    @Test
    void theGuideListsTheRoomsInReadingOrder() throws IOException {
        Map<String, List<String>> told = new HashMap<>();
        for (String row : found(rooms(), "(?m)^(\\| `[a-z]+` \\| .*)$")) {
            String[] cells = row.split("\\|", -1);
            told.put(cells[1].strip().replace("`", ""), found(cells[2].split(";", 2)[0], "`([a-z]+)`"));
        }

        assertThat(told).isEqualTo(ArchitectureTest.ROOMS);
    }

    private static String packages() throws IOException {
        return read("DEVELOPERS.md").split("The larger packages have rooms", 2)[0];
    }

    private static String rooms() throws IOException {
        return read("DEVELOPERS.md")
                .split("The larger packages have rooms", 2)[1]
                .split("\n## ", 2)[0];
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
                "docs/checks.md",
                "docs/pages.md",
                "docs/window.md",
                "demo-scripts/README.md",
                "models/README.md"
            })
    void linksPointToExistingFiles(String guide) throws IOException {
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

    @Test
    void everyDecisionIsInTheIndexOnce() throws IOException {
        try (var notes = Files.list(Path.of("docs/decisions"))) {
            assertThat(found(read("docs/decisions/README.md"), "\\((\\d{4}-[^)]+)\\)"))
                    .containsExactlyInAnyOrderElementsOf(
                            notes.map(note -> note.getFileName().toString())
                                    .filter(name -> name.matches("\\d{4}-.*\\.md"))
                                    .toList());
        }
    }

    @Test
    void testsNamedInDecisionsExist() throws IOException {
        Set<String> classes = names(javaFiles());
        try (var notes = Files.list(Path.of("docs/decisions"))) {
            for (Path note : notes.toList()) {
                List<String> named =
                        found(Files.readString(note, StandardCharsets.UTF_8), "`([A-Z]\\w+(?:Test|Properties|IT))\\b");
                assertThat(named.stream().filter(name -> !classes.contains(name + ".java")))
                        .as("not there, but named in %s", note)
                        .isEmpty();
            }
        }
    }

    /** A walk through the code names a class by its package and name, as {@code follow/Follower}. */
    @Test
    void classesNamedInTheGuideExist() throws IOException {
        Set<String> classes = javaFiles().stream()
                .map(file -> file.toString().replace('\\', '/').replaceFirst(".*/org/bookholder/", ""))
                .collect(Collectors.toSet());
        List<String> named = found(read("DEVELOPERS.md"), "`([a-z.]+/[A-Z]\\w+)(?:\\.[a-zA-Z]\\w*)?`");

        assertThat(named).hasSizeGreaterThan(10);
        assertThat(named.stream().filter(name -> !classes.contains(packagePath(name) + ".java")))
                .as("not there, but named in DEVELOPERS.md")
                .isEmpty();
    }

    private static Set<String> names(List<Path> files) {
        return files.stream().map(file -> file.getFileName().toString()).collect(Collectors.toSet());
    }

    private static String packagePath(String name) {
        int slash = name.indexOf('/');
        return name.substring(0, slash).replace('.', '/') + name.substring(slash);
    }

    private static List<Path> javaFiles() throws IOException {
        try (var files = Files.walk(Path.of("src"))) {
            return files.filter(file -> file.toString().endsWith(".java")).toList();
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
