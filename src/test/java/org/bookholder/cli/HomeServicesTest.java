package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.bookholder.app.home.HomeService;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Everything that a command does must be reachable from the page. */
final class HomeServicesTest {
    /** What the page does not reach yet. This list may only become shorter. */
    private static final List<String> NOT_YET = List.of();

    @TempDir
    private Path folder;

    @Test
    void everyCommandIsReachedFromThePageOrListedAsNotYetReached() {
        Terminal terminal = new Terminal(System.out, System.err, System.in, StandardCharsets.UTF_8);
        List<String> commands = Main.commands(StoredExamples.here(folder), terminal).getSubcommands().keySet().stream()
                .toList();
        List<String> reached =
                Arrays.stream(HomeService.values()).map(HomeService::command).toList();

        assertThat(Stream.concat(reached.stream(), NOT_YET.stream()))
                .as("each command is either reached or not yet reached")
                .containsExactlyInAnyOrderElementsOf(commands);
    }
}
