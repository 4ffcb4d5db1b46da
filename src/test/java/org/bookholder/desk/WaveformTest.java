package org.bookholder.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Wav;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The waveform of a take of four seconds that begins 10 s into the session; the second and the fourth are loud. */
final class WaveformTest {
    private static final int RATE = 16_000;

    @TempDir
    private Path folder;

    private Path take;

    @BeforeEach
    void record() throws IOException {
        short[] samples = new short[4 * RATE];
        Arrays.fill(samples, RATE, 2 * RATE, (short) -16_384);
        Arrays.fill(samples, 3 * RATE, 4 * RATE, Short.MAX_VALUE);
        take = Wav.write(folder.resolve("take-001.wav"), RATE, samples);
    }

    @Test
    void eachSliceHasItsPeakInPerCentOfFullScale() throws ProblemException {
        assertThat(drawn(10, 14, 4)).hasToString("{\"peaks\":[0,50,0,100],\"from\":10.000,\"to\":14.000}");
        assertThat(drawn(10.5, 11.5, 2).path("peaks")).hasToString("[0,50]");
    }

    @Test
    void onlyWhatIsRecordedIsDrawn() throws ProblemException {
        assertThat(drawn(8, 11, 1)).hasToString("{\"peaks\":[0],\"from\":10.000,\"to\":11.000}");
        assertThat(drawn(13, 20, 1)).hasToString("{\"peaks\":[100],\"from\":13.000,\"to\":14.000}");
        assertThat(drawn(20, 21, 5).path("peaks")).isEmpty();
    }

    @Test
    void thereAreNoMoreSlicesThanSamples() throws ProblemException {
        assertThat(drawn(11, 11 + 5.0 / RATE, 100).path("peaks")).hasToString("[50,50,50,50,50]");
    }

    @ParameterizedTest
    @CsvSource({"11, 11, 1", "12, 11, 1", "10, 130.1, 1", "10, 11, 0", "10, 11, 2001"})
    void figuresOutOfRangeAreRefused(double from, double to, int points) {
        assertThatIllegalArgumentException().isThrownBy(() -> drawn(from, to, points));
    }

    @Test
    void theLongestPieceAndTheMostSlicesAreDrawn() throws ProblemException {
        assertThat(drawn(10, 130, 2000).path("peaks")).hasSize(2000);
    }

    private JsonNode drawn(double from, double to, int points) throws ProblemException {
        return Waveform.of(take, StreamTime.ofSeconds(10), from, to, points);
    }
}
