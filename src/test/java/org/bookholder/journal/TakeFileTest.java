package org.bookholder.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.wav.WavHeader;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class TakeFileTest {
    private static final int RATE = 16_000;

    @TempDir
    private Path folder;

    private Path path;
    private byte[] whole;

    /** As it lies on the disk while it is recorded: the header knows of no sample yet, and the last one is half written. */
    @BeforeEach
    void record() throws IOException {
        path = Wav.write(folder.resolve("take-001.wav"), RATE, Wav.sine(200, 0.1, RATE, 0.1));
        whole = Files.readAllBytes(path);
        byte[] running = Arrays.copyOf(whole, whole.length + 1);
        System.arraycopy(WavHeader.of(RATE, 0), 0, running, 0, WavHeader.BYTES);
        Files.write(path, running);
    }

    @Test
    void endsWithTheLastWholeSample() throws ProblemException {
        assertThat(TakeFile.of(path)).isEqualTo(new TakeFile(path, whole.length, RATE));
    }

    @ParameterizedTest
    @CsvSource({"0, 44", "0, 4000", "20, 100", "43, 1", "43, 2", "44, 2", "100, 0", "3000, 244"})
    void isReadAsIfItEndedNow(int from, int count) throws ProblemException {
        ByteBuffer read = TakeFile.of(path).read(from, Math.min(count, whole.length - from));
        byte[] bytes = new byte[read.remaining()];
        read.get(bytes);
        assertThat(bytes).isEqualTo(Arrays.copyOfRange(whole, from, Math.min(from + count, whole.length)));
    }

    @Test
    void holdsSoundFromItsFirstWholeSampleOn() throws IOException {
        assertThat(TakeFile.holdsSound(path)).isTrue();
        assertThat(TakeFile.holdsSound(folder.resolve("take-002.wav"))).isFalse();
        for (int bytes : new int[] {0, WavHeader.BYTES, WavHeader.BYTES + 1}) {
            Files.write(path, Arrays.copyOf(whole, bytes));
            assertThat(TakeFile.holdsSound(path)).as("%d bytes", bytes).isFalse();
        }
        Files.write(path, Arrays.copyOf(whole, WavHeader.BYTES + 2));
        assertThat(TakeFile.holdsSound(path)).isTrue();
    }

    @Test
    void otherFilesAreRefused() throws IOException {
        Path letter = Files.writeString(folder.resolve("letter.wav"), "Dear ".repeat(20));
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(() -> TakeFile.of(letter))
                .withMessageContaining("is not the recording of a take");
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(() -> TakeFile.of(folder.resolve("none.wav")))
                .withMessageContaining("none.wav");
    }
}
