package org.bookholder.bench;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Readings measured with the packaged program by the tool beside the repository, where there is one. */
final class ReadingsBesideIT {
    private static final Path TOOL = Path.of("..", "shared", "tools", "run_readings.py");
    private static final Path PROGRAM = Path.of(System.getProperty("bookholder.program"), "bin", "bookholder");
    private static final String READING = "reader-l.dev";
    private static final int MINUTES = 5;

    @TempDir
    private Path folder;

    @Test
    void aReadingReachesItsFloors() throws IOException, InterruptedException {
        Assumptions.assumeTrue(Files.exists(TOOL), "there is no tool that measures readings beside the repository");
        Needs.program("python3", "Debian package python3");
        Needs.program("sox", "Debian package sox");
        Path scores = folder.resolve("scores.json");
        Process tool = new ProcessBuilder(
                        "python3",
                        TOOL.toString(),
                        "--only",
                        READING,
                        "--program",
                        PROGRAM.toString(),
                        "--work",
                        folder.toString(),
                        "--json",
                        scores.toString())
                .inheritIO()
                .start();
        try {
            assertThat(tool.waitFor(MINUTES, TimeUnit.MINUTES))
                    .as("ended in time")
                    .isTrue();
        } finally {
            tool.destroyForcibly();
        }
        assertThat(tool.exitValue()).isZero();
        JsonNode total = new ObjectMapper().readTree(scores.toFile()).get("total");
        Floors floors = Floors.read();
        assertThat(total.get("readings").asInt()).isEqualTo(1);
        for (String atLeast : new String[] {"lost_precision_min", "lost_recall_min", "best_found", "on_line"}) {
            assertThat(total.get(atLeast).asDouble())
                    .as(atLeast)
                    .isGreaterThanOrEqualTo(floors.of("beside." + atLeast));
        }
        for (String atMost : new String[] {"false_pickups", "false_retakes", "bound_error_p95", "never_reached"}) {
            assertThat(total.get(atMost).asDouble()).as(atMost).isLessThanOrEqualTo(floors.of("beside." + atMost));
        }
    }
}
