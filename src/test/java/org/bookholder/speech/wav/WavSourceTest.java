package org.bookholder.speech.wav;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.AudioSourceContract;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

final class WavSourceTest extends AudioSourceContract {
    private static final int PCM = 1;
    private static final int FLOAT = 3;
    private static final int HEADER = 44;
    private static final short[] TONE = Wav.sine(440, 0.5, 16_000, 1.01);

    @TempDir
    private Path folder;

    @Override
    protected AudioSource open() throws ProblemException {
        return WavSource.open(Wav.write(folder.resolve("tone.wav"), 16_000, TONE));
    }

    /** Every kind of sample, with the greatest error that its precision allows. */
    static Stream<Arguments> sampleFormats() {
        return Stream.of(
                Arguments.of(
                        "8 bit", PCM, 8, 255, (BiConsumer<ByteBuffer, Short>) (b, s) -> b.put((byte) ((s >> 8) + 128))),
                Arguments.of("16 bit", PCM, 16, 0, (BiConsumer<ByteBuffer, Short>) ByteBuffer::putShort),
                Arguments.of("24 bit", PCM, 24, 0, (BiConsumer<ByteBuffer, Short>)
                        (b, s) -> b.put((byte) 0).putShort(s)),
                Arguments.of("32 bit", PCM, 32, 0, (BiConsumer<ByteBuffer, Short>) (b, s) -> b.putInt(s << 16)),
                Arguments.of("float", FLOAT, 32, 0, (BiConsumer<ByteBuffer, Short>) (b, s) -> b.putFloat(s / 32_768f)),
                Arguments.of(
                        "double", FLOAT, 64, 0, (BiConsumer<ByteBuffer, Short>) (b, s) -> b.putDouble(s / 32_768.0)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("sampleFormats")
    void readsEverySampleFormatPlainAndExtensible(
            String name, int tag, int bits, int error, BiConsumer<ByteBuffer, Short> body) throws Exception {
        for (boolean extensible : new boolean[] {false, true}) {
            Path file = folder.resolve(name + extensible + ".wav");
            Wav.write(file, Wav.bytes(tag, 48_000, bits, extensible, new short[][] {TONE}, body));
            short[] read = Wav.samples(file);
            assertThat(read).hasSameSizeAs(TONE);
            for (int i = 0; i < read.length; i++) {
                assertThat(Math.abs(read[i] - TONE[i])).isLessThanOrEqualTo(error);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {8_000, 11_025, 16_000, 22_050, 24_000, 32_000, 44_100, 48_000, 96_000, 192_000})
    void readsEveryRateAndCountsTimeInSamples(int rate) throws Exception {
        Path file = Wav.write(folder.resolve("tone.wav"), rate, new short[rate * 2]);
        try (WavSource source = WavSource.open(file)) {
            assertThat(source.rate()).isEqualTo(rate);
            assertThat(source.length().seconds()).isEqualTo(2.0);
            double end = 0;
            while (source.read() instanceof AudioRead.Samples samples) {
                end = samples.block().end().seconds();
            }
            assertThat(end).isEqualTo(2.0);
        }
    }

    @Test
    void mixesChannelsInEqualParts() throws Exception {
        short[] left = {1000, -2000, 32_767, -32_768};
        short[] right = {3000, -4000, 32_767, -32_768};
        Path file = folder.resolve("stereo.wav");
        Wav.write(file, Wav.bytes(PCM, 44_100, 16, false, new short[][] {left, right}, ByteBuffer::putShort));
        assertArrayEquals(new short[] {2000, -3000, 32_767, -32_768}, Wav.samples(file));
    }

    @Test
    void clipsFloatsBeyondFullScale() throws Exception {
        Path file = folder.resolve("hot.wav");
        short[][] one = {{1, -1}};
        Wav.write(file, Wav.bytes(FLOAT, 16_000, 32, false, one, (b, s) -> b.putFloat(2.5f * s)));
        assertArrayEquals(new short[] {32_767, -32_768}, Wav.samples(file));
    }

    @Test
    void readsARecordingThatWasNeverClosed() throws Exception {
        byte[] bytes = Files.readAllBytes(Wav.write(folder.resolve("a.wav"), 16_000, TONE));
        little(bytes).putInt(4, 0).putInt(40, 0);
        assertReadsAll(bytes, "not closed");
    }

    @Test
    void readsACrashedRecordingBeyondTheSizesInItsHeader() throws Exception {
        byte[] bytes = Files.readAllBytes(Wav.write(folder.resolve("a.wav"), 16_000, TONE));
        little(bytes).putInt(4, 36 + 8_000).putInt(40, 8_000);
        assertReadsAll(bytes, "past the length");
    }

    @Test
    void readsATruncatedFileAsFarAsItGoes() throws Exception {
        byte[] bytes = Files.readAllBytes(Wav.write(folder.resolve("a.wav"), 16_000, TONE));
        Path file = Wav.write(folder.resolve("cut.wav"), Arrays.copyOf(bytes, HEADER + 10_001));
        try (WavSource source = WavSource.open(file)) {
            assertThat(source.warnings()).hasSize(2).anyMatch(w -> w.contains("cut short"));
        }
        assertArrayEquals(Arrays.copyOf(TONE, 5_000), Wav.samples(file));
    }

    @Test
    void doesNotTakeATagAfterTheSoundForSound() throws Exception {
        byte[] bytes = Files.readAllBytes(Wav.write(folder.resolve("a.wav"), 16_000, TONE));
        byte[] tagged = Arrays.copyOf(bytes, bytes.length + 12);
        little(tagged)
                .put(bytes.length, "id3 ".getBytes(StandardCharsets.US_ASCII))
                .putInt(bytes.length + 4, 4);
        Path file = Wav.write(folder.resolve("tagged.wav"), tagged);
        try (WavSource source = WavSource.open(file)) {
            assertThat(source.warnings()).isEmpty();
        }
        assertArrayEquals(TONE, Wav.samples(file));
    }

    @Test
    void saysWhatIsWrongWithAFileThatCannotBeRead() throws Exception {
        byte[] good = Files.readAllBytes(Wav.write(folder.resolve("a.wav"), 16_000, TONE));
        byte[] silent = Files.readAllBytes(Wav.write(folder.resolve("b.wav"), 16_000, new short[0]));
        byte[] mp3 = good.clone();
        little(mp3).putShort(20, (short) 0x55);
        byte[] fast = good.clone();
        little(fast).putInt(24, 384_000);
        byte[] noChannels = good.clone();
        little(noChannels).putShort(22, (short) 0);
        assertProblem(new byte[0], "empty");
        assertProblem("Just some words, not sound.".getBytes(StandardCharsets.UTF_8), "not a WAV file");
        assertProblem("RIFF".getBytes(StandardCharsets.UTF_8), "not a WAV file");
        assertProblem(silent, "holds no sound");
        assertProblem(Arrays.copyOf(good, 30), "damaged|ends before|does not say");
        assertProblem(mp3, "0x0055");
        assertProblem(fast, "384000 Hz is out of range");
        assertProblem(noChannels, "damaged");
    }

    @Test
    void saysSoWhenThereIsNoFile() {
        ProblemException missing =
                assertThrows(ProblemException.class, () -> WavSource.open(folder.resolve("nothing.wav")));
        assertThat(missing).hasMessageContaining("no such file").hasMessageContaining("nothing.wav");
        ProblemException directory = assertThrows(ProblemException.class, () -> WavSource.open(folder));
        assertThat(directory).hasMessageContaining("folder");
    }

    private void assertReadsAll(byte[] bytes, String warning) throws Exception {
        Path file = Wav.write(folder.resolve("crashed.wav"), bytes);
        try (WavSource source = WavSource.open(file)) {
            assertThat(source.warnings()).singleElement().asString().contains(warning);
        }
        assertArrayEquals(TONE, Wav.samples(file));
    }

    private void assertProblem(byte[] bytes, String what) {
        Path file = Wav.write(folder.resolve("bad.wav"), bytes);
        ProblemException problem = assertThrows(ProblemException.class, () -> WavSource.open(file));
        assertThat(problem.what()).containsPattern(what);
        assertThat(problem.where()).isEqualTo(file.toString());
        assertThat(problem.remedy()).isNotBlank();
    }

    private static ByteBuffer little(byte[] bytes) {
        return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }
}
