package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Needs;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Recordings of every kind, read by the whole program with the real recogniser. */
@Timeout(120)
@Execution(ExecutionMode.CONCURRENT)
final class OddRecordingTest {
    private static final Path MODEL = Path.of(System.getProperty("bookholder.home"), "models/vosk-model-en-us");
    private static final int PCM = 1;
    private static final int FLOAT = 3;

    @TempDir
    private Path folder;

    private Program program;
    private String script;

    @BeforeEach
    void writeScript() {
        Needs.file(MODEL.resolve("am/final.mdl"), "mvn compile");
        program = new Program(folder);
        program.equipment.hearsForReal();
        script = program.file("wheel.md", "Hello, and welcome to the workshop.\n");
    }

    static Stream<Arguments> kinds() {
        BiConsumer<ByteBuffer, Short> sixteen = ByteBuffer::putShort;
        BiConsumer<ByteBuffer, Short> twentyFour = (b, s) -> b.put((byte) 0).putShort(s);
        BiConsumer<ByteBuffer, Short> floating = (b, s) -> b.putFloat(s / 32_768f);
        return Stream.of(
                Arguments.of("8 kHz", PCM, 8_000, 16, 1, sixteen),
                Arguments.of("96 kHz", PCM, 96_000, 16, 1, sixteen),
                Arguments.of("stereo", PCM, 44_100, 16, 2, sixteen),
                Arguments.of("24 bit", PCM, 48_000, 24, 1, twentyFour),
                Arguments.of("float", FLOAT, 48_000, 32, 1, floating));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("kinds")
    void allFormatsGiveTheSameResult(
            String name, int tag, int rate, int bits, int channels, BiConsumer<ByteBuffer, Short> sample)
            throws ProblemException {
        short[][] sound = new short[channels][];
        Arrays.fill(sound, DemoVoice.firstLine().at(rate));
        Wav.write(folder.resolve("voice.wav"), Wav.bytes(tag, rate, bits, false, sound, sample));
        assertThat(read()).isZero();
        assertThat(program.err()).isEmpty();
        assertThat(program.out()).contains("1 in all, 1 clean");
    }

    @Test
    void aTruncatedRecordingIsReadAsFarAsItGoesAndReported() throws ProblemException, IOException {
        Path voice = DemoVoice.firstLine().write(folder.resolve("voice.wav"));
        byte[] bytes = Files.readAllBytes(voice);
        Files.write(voice, Arrays.copyOf(bytes, bytes.length - 1_000));
        assertThat(read()).isZero();
        assertThat(program.err())
                .hasLineCount(1)
                .startsWith("bookholder: ")
                .contains("voice.wav", "the file is cut short; it is read as far as it goes");
        assertThat(program.out()).contains("1 in all, 1 clean");
    }

    @Test
    void aSilentOrEmptyRecordingIsRefusedAndLeavesNothingBehind() throws IOException {
        Wav.write(folder.resolve("voice.wav"), 16_000, new short[0]);
        assertThat(read()).isEqualTo(2);
        assertThat(program.err()).hasLineCount(1).contains("voice.wav: ", "holds no sound");
        Files.write(folder.resolve("voice.wav"), new byte[0]);
        assertThat(read()).isEqualTo(2);
        assertThat(program.err()).hasLineCount(1).contains("voice.wav: ", "empty");
        assertThat(folder.resolve("session")).doesNotExist();
    }

    private int read() {
        return program.run(
                "read",
                script,
                "--audio",
                program.path("voice.wav"),
                "--no-window",
                "--unpaced",
                "--model",
                MODEL.toString(),
                "--session",
                program.path("session"));
    }
}
