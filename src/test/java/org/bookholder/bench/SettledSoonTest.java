package org.bookholder.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.bookholder.follow.model.Attempt;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.speech.wav.WavSource;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * A fast reading, whose pauses are too short to end an utterance: lines must be settled while the reading continues.
 */
@Timeout(600)
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
        Map<Integer, Double> first = new HashMap<>();
        for (SessionEvent event : events) {
            if (event instanceof SessionEvent.AttemptSettled settled) {
                first.putIfAbsent(settled.attempt().ordinal(), settled.at().seconds());
            }
        }
        List<Attempt> attempts = events.stream()
                .filter(SessionEvent.TakeSettled.class::isInstance)
                .map(SessionEvent.TakeSettled.class::cast)
                .findFirst()
                .orElseThrow()
                .attempts();
        assertThat(attempts).hasSizeGreaterThan(15);
        for (Attempt attempt : attempts) {
            assertThat(first.getOrDefault(attempt.ordinal(), Double.POSITIVE_INFINITY)
                            - attempt.end().seconds())
                    .as("line %d, attempt %d", attempt.line(), attempt.ordinal())
                    .isLessThan(LATEST_SECONDS);
        }
    }
}
