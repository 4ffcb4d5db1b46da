package org.bookholder.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.wav.WavHeader;
import org.bookholder.testing.Audio;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class TakeAudioTest {
    private static final StreamTime START = StreamTime.ofSeconds(60);
    private static final int RATE = 16_000;

    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void nameTheFile() {
        file = folder.resolve("take-001.wav");
    }

    @Test
    void followsARecordingThatIsBeingWritten() throws ProblemException {
        try (TakeRecording recording = TakeRecording.create(file, RATE, START);
                TakeAudio audio = TakeAudio.open(file, START)) {
            assertThat(audio.rate()).isEqualTo(RATE);
            assertThat(audio.read(800)).isEmpty();
            recording.append(Audio.block(START, RATE, 0, 1_000));
            assertBlock(audio.read(800).orElseThrow(), 0, 800);
            assertBlock(audio.read(800).orElseThrow(), 800, 200);
            assertThat(audio.read(800)).isEmpty();
            recording.append(Audio.block(START, RATE, 1_000, 10));
            assertBlock(audio.read(800).orElseThrow(), 1_000, 10);
            assertThat(audio.end()).isEqualTo(START.plus(StreamTime.ofSamples(1_010, RATE)));
        }
    }

    @Test
    void readsTheAudioBetweenTwoTimes() throws ProblemException {
        try (TakeRecording recording = TakeRecording.create(file, RATE, START);
                TakeAudio audio = TakeAudio.open(file, START)) {
            recording.append(Audio.block(START, RATE, 0, RATE));
            assertBlock(audio.read(second(60.25), second(60.5)).orElseThrow(), RATE / 4, RATE / 4);
            assertBlock(audio.read(second(60.75), second(99)).orElseThrow(), RATE * 3L / 4, RATE / 4);
            assertBlock(audio.read(second(1), second(60.5)).orElseThrow(), 0, RATE / 2);
            assertThat(audio.read(second(61), second(62))).isEmpty();
            assertThat(audio.read(second(1), second(2))).isEmpty();
            assertThat(audio.read(second(60.5), second(60.25))).isEmpty();
            assertBlock(audio.read(100).orElseThrow(), 0, 100);
        }
    }

    @Test
    void readsFromASampleOn() throws ProblemException {
        try (TakeRecording recording = TakeRecording.create(file, RATE, START);
                TakeAudio audio = TakeAudio.open(file, START)) {
            recording.append(Audio.block(START, RATE, 0, 1_000));
            assertBlock(audio.readFrom(900, 50).orElseThrow(), 900, 50);
            assertBlock(audio.readFrom(900, 500).orElseThrow(), 900, 100);
            assertThat(audio.readFrom(1_000, 1)).isEmpty();
            assertBlock(audio.read(1).orElseThrow(), 0, 1);
        }
    }

    @Test
    void canBeReadNoMoreAfterItIsClosed() throws ProblemException {
        TakeRecording.create(file, RATE, START).close();
        TakeAudio audio = TakeAudio.open(file, START);
        audio.close();
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(audio::end)
                .satisfies(e -> assertThat(e.where()).isEqualTo(file.toString()));
    }

    @Test
    void returnsNoMoreThanFiveMinutesAtOnce() throws ProblemException, IOException {
        TakeRecording.create(file, RATE, START).close();
        try (RandomAccessFile wav = new RandomAccessFile(file.toFile(), "rw");
                TakeAudio audio = TakeAudio.open(file, START)) {
            wav.setLength(WavHeader.BYTES + 2L * RATE * 3_600);
            AudioBlock block = audio.read(second(120), second(1_200)).orElseThrow();
            assertThat(block.start()).isEqualTo(second(120));
            assertThat(block.end()).isEqualTo(second(420));
        }
    }

    @Test
    void leavesAHalfWrittenSampleForLater() throws ProblemException, IOException {
        TakeRecording.create(file, RATE, START).close();
        try (RandomAccessFile wav = new RandomAccessFile(file.toFile(), "rw");
                TakeAudio audio = TakeAudio.open(file, START)) {
            wav.setLength(WavHeader.BYTES + 5);
            assertThat(audio.read(9).orElseThrow().samples()).hasSize(2);
            assertThat(audio.read(9)).isEmpty();
        }
    }

    @Test
    void refusesFilesThatAreNotATake() throws IOException {
        assertProblem("no such file");
        Files.createFile(file);
        assertProblem("not the recording of a take");
        Files.write(file, new byte[100]);
        assertProblem("not the recording of a take");
    }

    @Test
    void refusesToReadNothing() throws ProblemException {
        TakeRecording.create(file, RATE, START).close();
        try (TakeAudio audio = TakeAudio.open(file, START)) {
            assertThatIllegalArgumentException().isThrownBy(() -> audio.read(0));
        }
    }

    private void assertProblem(String what) {
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(() -> TakeAudio.open(file, START))
                .satisfies(e -> assertThat(e.what()).contains(what))
                .satisfies(e -> assertThat(e.where()).isEqualTo(file.toString()));
    }

    private static void assertBlock(AudioBlock block, long from, int count) {
        assertThat(block.samples())
                .isEqualTo(Audio.block(START, RATE, from, count).samples());
        assertThat(block.start()).isEqualTo(START.plus(StreamTime.ofSamples(from, RATE)));
        assertThat(block.rate()).isEqualTo(RATE);
    }

    private static StreamTime second(double seconds) {
        return StreamTime.ofSeconds(seconds);
    }
}
