package org.bookholder.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.speech.wav.WavSource;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/**
 * Fast readings, whose pauses are too short to end an utterance: lines must be settled while the reading continues.
 */
@Timeout(600)
@Execution(ExecutionMode.CONCURRENT)
final class SettledSoonTest {
    private static final Path HOME = Path.of(System.getProperty("bookholder.home", ""));

    /** Longest time after the pause that ends a line until it must be settled. */
    private static final double LATEST_SECONDS = 10;

    private static final int LINES = 15;

    @Test
    void linesAreSettledWithinSeconds() throws IOException, ProblemException {
        String script = Files.readString(HOME.resolve("demo-scripts/lesson-1.md"));
        List<SettlingDelay> delays = delays(script, WavSource.open(HOME.resolve("demo-scripts/lesson-1.wav")));
        assertThat(delays).hasSizeGreaterThan(15);
        assertSoon(delays);
    }

    /** The clips keep 0.08 s of quiet on each side, so no pause between lines ends an utterance. */
    @Test
    void linesWithoutPausesBetweenThemAreSettledWithinSecondsToo() throws IOException, ProblemException {
        Needs.file(Recordings.PROMPTS, "Debian packages asterisk-core-sounds-en and asterisk-core-sounds-en-g722");
        List<Utterance> lines = Recordings.prompts().utterances().subList(20, 20 + LINES);
        String script = "---\ntitle: Unbroken\nlines: as-written\n---\n"
                + lines.stream().map(Utterance::text).collect(Collectors.joining("\n"));
        short[] sound = Sound.joined(lines.stream().map(Utterance::sound).toList());
        List<SettlingDelay> delays = delays(script, FakeAudioSource.of(Sound.RATE, sound));
        assertThat(delays).hasSizeGreaterThanOrEqualTo(LINES);
        assertSoon(delays);
    }

    private static List<SettlingDelay> delays(String script, AudioSource sound) throws IOException, ProblemException {
        Needs.file(KilledReading.MODEL.resolve("am/final.mdl"), "mvn compile");
        try (VoskEars ears = VoskEars.load(KilledReading.MODEL)) {
            return SettlingDelay.of(ReadingRun.read(script, sound, ears).events());
        }
    }

    private static void assertSoon(List<SettlingDelay> delays) {
        for (SettlingDelay delay : delays) {
            assertThat(delay.seconds())
                    .as(
                            "line %d, attempt %d",
                            delay.attempt().line(), delay.attempt().ordinal())
                    .isLessThan(LATEST_SECONDS);
        }
    }
}
