package org.bookholder.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/**
 * A few short readings, so that no change makes following much worse unnoticed. Their limits are in {@code
 * floors.properties}; {@link Accuracy} measures thoroughly.
 */
@Execution(ExecutionMode.CONCURRENT)
final class AccuracyFloorsTest {
    private static final Path HOME = Path.of(System.getProperty("bookholder.home"));
    private static final Path MODEL = HOME.resolve("models/vosk-model-en-us");
    private static final double NOISE_DECIBELS = 15;
    private static final double FAN_DECIBELS = 10;

    @Test
    void recordedReadingsReachTheirFloors() throws Exception {
        Needs.file(Recordings.PROMPTS, "Debian packages asterisk-core-sounds-en and asterisk-core-sounds-en-g722");
        Needs.file(Recordings.NOVEL, "Debian package pocketsphinx-testdata");
        Composition prompts = Composer.compose(Recordings.prompts(), 20, Recipe.quick(), 1);
        Composition novel = Composer.compose(Recordings.novel(), 0, Recipe.brief(), 1);
        assertReaches("recorded", List.of(prompts, novel));
    }

    @Test
    void aSyntheticReadingInNoiseReachesItsFloors() throws Exception {
        Needs.program("flite", "Debian package flite");
        Voice voice = new Flite("rms", 1.0).lessons(HOME.resolve("demo-scripts"));
        assertReaches(
                "noisy", List.of(Composer.compose(voice, 20, Recipe.quick(), 1).inPinkNoise(NOISE_DECIBELS)));
    }

    @Test
    void aRecordedReadingBesideAFanReachesItsFloors() throws Exception {
        Needs.file(Recordings.PROMPTS, "Debian packages asterisk-core-sounds-en and asterisk-core-sounds-en-g722");
        Composition prompts = Composer.compose(Recordings.prompts(), 60, Recipe.quick(), 1);
        assertReaches("fan", List.of(prompts.besideAFan(FAN_DECIBELS)));
    }

    private static void assertReaches(String column, List<Composition> readings) throws ProblemException, IOException {
        Needs.file(MODEL, "unpacked by the build");
        Score sum = new Score();
        try (VoskEars ears = VoskEars.load(MODEL)) {
            for (Composition reading : readings) {
                FakeAudioSource sound = FakeAudioSource.of(Sound.RATE, reading.sound());
                sum.add(Scorer.score(reading.truth(), Findings.of(ReadingRun.read(reading.script(), sound, ears))));
            }
        }
        Floors floors = Floors.read();
        String table = Measures.table(List.of(column), List.of(sum));
        assertThat(floors.names(column)).as("%s", table).allSatisfy(name -> {
            double limit = floors.of(column + "." + name);
            assertThat(Measures.named(name).of(sum).reaches(limit))
                    .as("%s = %s", name, limit)
                    .isTrue();
        });
    }
}
