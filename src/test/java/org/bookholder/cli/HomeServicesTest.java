package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.bookholder.app.home.HomeService;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

/** Everything that a command does must be reachable from the page, and the guide says where. */
final class HomeServicesTest {
    private static final Path GUIDE = Path.of("docs/pages.md");
    private static final Path PAGE = Path.of("src/main/resources/org/bookholder/desk/http/page");
    private static final Pattern ROW = Pattern.compile("(?m)^\\| `(\\w+)` \\| ([^|]+) \\| `([^`]+)` \\| (.*) \\|$");
    private static final Pattern OPTION = Pattern.compile("`(--[a-z-]+)`");
    private static final Pattern QUOTED = Pattern.compile("\"([^\"]+)\"");

    @TempDir
    private Path folder;

    @Test
    void everyCommandIsReachedFromThePage() {
        assertThat(HomeService.values())
                .extracting(HomeService::command)
                .containsExactlyInAnyOrderElementsOf(commands().keySet());
    }

    @Test
    void theGuideSaysOfEachCommandWhereItIs() throws IOException {
        assertThat(rows())
                .extracting(row -> row.group(1), row -> row.group(2), row -> row.group(3))
                .containsExactlyInAnyOrderElementsOf(Arrays.stream(HomeService.values())
                        .map(service -> tuple(service.command(), service.title(), service.where()))
                        .toList());
    }

    @Test
    void theGuideSaysOfEachOptionWhereItIs() throws IOException {
        Map<String, CommandLine> commands = commands();
        assertThat(rows()).isNotEmpty().allSatisfy(row -> {
            CommandLine command = Objects.requireNonNull(commands.get(row.group(1)));
            Stream<OptionSpec> options = command.getCommandSpec().options().stream()
                    .filter(option -> !option.usageHelp() && !option.versionHelp());
            assertThat(found(OPTION, row.group(4)))
                    .as(row.group(1))
                    .containsExactlyInAnyOrderElementsOf(options.map(OptionSpec::longestName)
                            .map(name -> name.replace("--[no-]", "--"))
                            .toList());
        });
    }

    @Test
    void whatTheGuideQuotesStandsOnThePages() throws IOException {
        StringBuilder page = new StringBuilder();
        try (DirectoryStream<Path> files = Files.newDirectoryStream(PAGE, "*.{js,html}")) {
            for (Path file : files) {
                page.append(Files.readString(file));
            }
        }
        assertThat(rows())
                .allSatisfy(row -> assertThat(found(QUOTED, row.group(4)))
                        .as(row.group(1))
                        .allSatisfy(text -> assertThat(page).contains(text)));
    }

    private Map<String, CommandLine> commands() {
        Terminal terminal = new Terminal(System.out, System.err, System.in, StandardCharsets.UTF_8);
        return Main.commands(StoredExamples.here(folder), terminal).getSubcommands();
    }

    private static List<MatchResult> rows() throws IOException {
        return ROW.matcher(Files.readString(GUIDE)).results().toList();
    }

    private static List<String> found(Pattern pattern, String text) {
        return pattern.matcher(text).results().map(found -> found.group(1)).toList();
    }
}
