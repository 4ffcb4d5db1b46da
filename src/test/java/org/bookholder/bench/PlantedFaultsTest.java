package org.bookholder.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.bookholder.delivery.Finding;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A short form of the table in docs/checks.md, with the demo's reading. */
final class PlantedFaultsTest {
    private static final Path READING =
            Path.of(System.getProperty("bookholder.home")).resolve("demo-scripts/lesson-1.wav");

    private static final int SECONDS = 40;

    /** Of the holes of a fault. */
    private static final double SHARE = 0.8;

    @TempDir
    private Path folder;

    /** Those that are found nearly always; the table names the others, as holes of 5 ms after AAC. */
    @ParameterizedTest
    @EnumSource(
            names = {
                "DROPOUT_12",
                "CLIPPED_6_LOWERED_3",
                "CLIPPED_12_LOWERED_20",
                "ECHO_30_MS",
                "HISS_15_DB_BELOW",
                "HUM_30_DB_BELOW"
            })
    void isFoundAfterTheCodec(SoundFault fault) throws ProblemException {
        PlantedFaults bench = new PlantedFaults(folder);
        SoundFault.Planted planted = fault.plant(bench.voice(READING, SECONDS), new Random(5));
        List<Finding> findings = bench.found(planted.channels(), "128k");
        assertThat(PlantedFaults.hits(fault, planted, findings))
                .as("%s of %d: %s", fault, planted.count(), findings)
                .isGreaterThanOrEqualTo((int) Math.ceil(SHARE * planted.count()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"wav", "128k"})
    void aVoiceWithoutFaultsIsRight(String way) throws ProblemException {
        PlantedFaults bench = new PlantedFaults(folder);
        float[] voice = bench.voice(READING, SECONDS);
        SoundFault.Planted sound = SoundFault.NONE.plant(voice, new Random(5));
        assertThat(bench.found(sound.channels(), way)).isEmpty();
        SoundFault.Planted limited = SoundFault.LIMITED.plant(voice, new Random(5));
        assertThat(bench.found(limited.channels(), way)).isEmpty();
    }

    @Test
    void holesOfFiveMillisecondsAreFoundInWav() throws ProblemException {
        PlantedFaults bench = new PlantedFaults(folder);
        SoundFault.Planted planted = SoundFault.DROPOUT_5.plant(bench.voice(READING, SECONDS), new Random(6));
        List<Finding> findings = bench.found(planted.channels(), "wav");
        assertThat(PlantedFaults.hits(SoundFault.DROPOUT_5, planted, findings))
                .isGreaterThanOrEqualTo((int) Math.ceil(0.9 * planted.count()));
    }
}
