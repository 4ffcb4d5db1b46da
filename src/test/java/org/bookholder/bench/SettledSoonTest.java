package org.bookholder.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.speech.wav.WavSource;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/**
 * A fast reading, whose pauses are too short to end an utterance: lines must be settled while the reading continues.
 */
@Timeout(600)
@Execution(ExecutionMode.CONCURRENT)
final class SettledSoonTest {
    private static final Path HOME = Path.of(System.getProperty("bookholder.home", ""));

    /** Longest time after the pause that ends a line until it must be settled. */
    private static final double LATEST_SECONDS = 10;

    @Test
    void linesAreSettledWithinSeconds() throws IOException, ProblemException {
        Needs.file(KilledReading.MODEL.resolve("am/final.mdl"), "mvn compile");
        String script = Files.readString(HOME.resolve("demo-scripts/lesson-1.md"));
        List<SessionEvent> events;
        try (VoskEars ears = VoskEars.load(KilledReading.MODEL)) {
            events = ReadingRun.read(script, WavSource.open(HOME.resolve("demo-scripts/lesson-1.wav")), ears)
                    .events();
        }
        List<SettlingDelay> delays = SettlingDelay.of(events);
        assertThat(delays).hasSizeGreaterThan(15);
        for (SettlingDelay delay : delays) {
            assertThat(delay.seconds())
                    .as(
                            "line %d, attempt %d",
                            delay.attempt().line(), delay.attempt().ordinal())
                    .isLessThan(LATEST_SECONDS);
        }
    }
}
