package org.bookholder.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.File;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.wav.WavHeader;
import org.bookholder.testing.Audio;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class TakeRecordingTest {
    private static final StreamTime START = StreamTime.ofSeconds(2);
    private static final int RATE = 48_000;

    @TempDir
    private Path folder;

    /** The JDK's own reader is the outside check of the header. */
    @ParameterizedTest
    @ValueSource(ints = {8_000, 16_000, 44_100, 48_000, 96_000})
    void writesAWavFileThatOthersRead(int rate) throws Exception {
        try (TakeRecording recording = TakeRecording.create(file(), rate, START)) {
            for (int i = 0; i < 30; i++) {
                recording.append(Audio.block(START, rate, i * 1_000L, 1_000));
            }
        }
        assertThat(samplesReadByTheJdk(rate)).hasSize(30_000).satisfies(this::areInPlace);
    }

    @Test
    void canBeReadByOthersAfterEachSync() throws Exception {
        try (TakeRecording recording = TakeRecording.create(file(), RATE, START)) {
            recording.append(Audio.block(START, RATE, 0, 480));
            recording.sync();
            recording.append(Audio.block(START, RATE, 480, 480));
            assertThat(samplesReadByTheJdk(RATE)).hasSize(480).satisfies(this::areInPlace);
            recording.sync();
            assertThat(samplesReadByTheJdk(RATE)).hasSize(960).satisfies(this::areInPlace);
        }
    }

    /** What a power cut can lose depends on this alone: the file is forced with its header corrected, and at its end. */
    @Test
    void forcesTheFileWithEachSyncAndAtItsEnd() throws Exception {
        ForcedSizes disk = new ForcedSizes();
        TakeRecording recording = TakeRecording.create(file(), RATE, START, WavHeader.MAX_DATA, disk);
        recording.append(Audio.block(START, RATE, 0, 480));
        recording.sync();
        recording.append(Audio.block(START, RATE, 480, 480));
        assertThat(disk.sizes).containsExactly(960);
        recording.close();
        recording.close();
        recording.sync();
        assertThat(disk.sizes).containsExactly(960, 1_920);
    }

    @Test
    void tellsThatTheDiskCannotBeForcedAndTriesOn() throws Exception {
        ForcedSizes disk = new ForcedSizes();
        TakeRecording recording = TakeRecording.create(file(), RATE, START, WavHeader.MAX_DATA, disk);
        recording.append(Audio.block(START, RATE, 0, 480));
        disk.gone = true;
        assertThatExceptionOfType(ProblemException.class).isThrownBy(recording::sync);
        assertThatExceptionOfType(ProblemException.class).isThrownBy(recording::sync);
        disk.gone = false;
        recording.close();
        assertThat(disk.sizes).containsExactly(960);
    }

    @Test
    void fillsLostAudioWithSilence() throws Exception {
        try (TakeRecording recording = TakeRecording.create(file(), RATE, START)) {
            recording.append(Audio.block(START, RATE, 100, 50));
            recording.append(Audio.block(START, RATE, 30_000, 50));
            assertThat(recording.end()).isEqualTo(START.plus(StreamTime.ofSamples(30_050, RATE)));
        }
        short[] samples = samplesReadByTheJdk(RATE);
        assertThat(samples).hasSize(30_050);
        for (int i = 0; i < samples.length; i++) {
            boolean heard = (i >= 100 && i < 150) || i >= 30_000;
            assertThat(samples[i]).as("sample %d", i).isEqualTo(heard ? Audio.sample(i) : 0);
        }
    }

    @Test
    void roundedTimesAreNotGaps() throws Exception {
        StreamTime start = new StreamTime(1_234_567);
        int rate = 44_100;
        try (TakeRecording recording = TakeRecording.create(file(), rate, start)) {
            for (int i = 0; i < 1_000; i++) {
                recording.append(Audio.block(start, rate, i * 441L, 441));
            }
        }
        assertThat(samplesReadByTheJdk(rate)).hasSize(441_000).satisfies(this::areInPlace);
    }

    @Test
    void refusesBlocksThatDoNotFit() throws ProblemException {
        try (TakeRecording recording = TakeRecording.create(file(), RATE, START)) {
            recording.append(Audio.block(START, RATE, 0, 480));
            AudioBlock early = Audio.block(START, RATE, 0, 480);
            AudioBlock slow = Audio.block(START, 16_000, 480, 160);
            assertThatIllegalArgumentException().isThrownBy(() -> recording.append(early));
            assertThatIllegalArgumentException().isThrownBy(() -> recording.append(slow));
        }
    }

    @Test
    void keepsWholeBlocksWhenTheDiskIsFullAndGoesOnWhenItIsNot() throws Exception {
        List<FullDisk> handles = new ArrayList<>();
        TakeRecording recording = TakeRecording.create(file(), RATE, START, WavHeader.MAX_DATA, f -> {
            handles.add(new FullDisk(f.toFile(), 2_045));
            return handles.get(handles.size() - 1);
        });
        recording.append(Audio.block(START, RATE, 0, 960));
        for (int i = 0; i < 3; i++) {
            assertThatExceptionOfType(ProblemException.class)
                    .isThrownBy(() -> recording.append(Audio.block(START, RATE, 960, 960)))
                    .satisfies(e -> assertThat(e.what()).isEqualTo("the disk is full"))
                    .satisfies(e -> assertThat(e.where()).isEqualTo(file().toString()));
            recording.sync();
            assertThat(samplesReadByTheJdk(RATE)).hasSize(960).satisfies(this::areInPlace);
        }
        handles.forEach(handle -> handle.room = Long.MAX_VALUE);
        recording.append(Audio.block(START, RATE, 960, 960));
        recording.close();
        assertThat(samplesReadByTheJdk(RATE)).hasSize(1_920).satisfies(this::areInPlace);
    }

    @Test
    void tellsThatItsFileIsGone() throws Exception {
        TakeRecording recording = TakeRecording.create(file(), RATE, START);
        recording.append(Audio.block(START, RATE, 0, 960));
        Files.delete(file());
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(recording::sync)
                .satisfies(e -> assertThat(e.what()).isEqualTo("is gone"));
    }

    @Test
    void leavesNothingInTheWayOfAnotherAttempt() {
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(() -> TakeRecording.create(
                        file(), RATE, START, WavHeader.MAX_DATA, f -> new FullDisk(f.toFile(), 20)));
        assertThat(file()).doesNotExist();
    }

    @Test
    void reportsAFullWavFile() throws Exception {
        TakeRecording recording =
                TakeRecording.create(file(), RATE, START, 2_000, f -> new RandomAccessFile(f.toFile(), "rw"));
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(() -> recording.append(Audio.block(START, RATE, 0, 1_001)))
                .satisfies(e -> assertThat(e.what()).contains("all that a WAV file can hold"));
        recording.append(Audio.block(START, RATE, 0, 1_000));
        recording.close();
        assertThat(samplesReadByTheJdk(RATE)).hasSize(1_000).satisfies(this::areInPlace);
    }

    @Test
    void tellsHowLongATakeBecameThatFillsItsFile() throws Exception {
        try (TakeRecording recording =
                TakeRecording.create(file(), 1, START, 7_200, f -> new RandomAccessFile(f.toFile(), "rw"))) {
            recording.append(Audio.block(START, 1, 0, 2_000));
            recording.append(Audio.block(START, 1, 2_000, 1_600));
            assertThatExceptionOfType(ProblemException.class)
                    .isThrownBy(() -> recording.append(Audio.block(START, 1, 3_600, 1)))
                    .satisfies(e -> assertThat(e.what()).startsWith("the take has reached 1.0 hours"));
        }
        assertThat(samplesReadByTheJdk(1)).hasSize(3_600).satisfies(this::areInPlace);
    }

    @Test
    void aGapThatTheFileHasNoRoomForLeavesItAsItWas() throws Exception {
        try (TakeRecording recording =
                TakeRecording.create(file(), RATE, START, 2_000, f -> new RandomAccessFile(f.toFile(), "rw"))) {
            recording.append(Audio.block(START, RATE, 0, 400));
            assertThatExceptionOfType(ProblemException.class)
                    .isThrownBy(() -> recording.append(Audio.block(START, RATE, 990, 20)))
                    .satisfies(e -> assertThat(e.what()).contains("all that a WAV file can hold"));
            assertThat(file()).hasSize(WavHeader.BYTES + 800);
            assertThat(recording.end()).isEqualTo(START.plus(StreamTime.ofSamples(400, RATE)));
            assertThatExceptionOfType(ProblemException.class)
                    .isThrownBy(() -> recording.append(Audio.block(START, RATE, 1_001, 20)))
                    .satisfies(e -> assertThat(e.what()).contains("all that a WAV file can hold"));
            recording.append(Audio.block(START, RATE, 990, 10));
        }
        assertThat(file()).hasSize(WavHeader.BYTES + 2_000);
    }

    @Test
    void refusesARateThatIsNone() {
        for (int rate : new int[] {0, -1}) {
            assertThatIllegalArgumentException().isThrownBy(() -> TakeRecording.create(file(), rate, START));
        }
        assertThat(file()).doesNotExist();
    }

    @Test
    void leavesNothingOfAFileThatItOverwrites() throws Exception {
        Files.write(file(), new byte[10_000]);
        try (TakeRecording recording = TakeRecording.create(file(), RATE, START)) {
            recording.append(Audio.block(START, RATE, 0, 480));
        }
        assertThat(Files.size(file())).isEqualTo(WavHeader.BYTES + 960);
    }

    @Test
    void holdsTakesOfADayInOneFile() {
        // Sizes are unsigned 32-bit counts of bytes: 12.4 hours at 48 kHz, 37.3 hours at 16 kHz.
        assertThat(WavHeader.MAX_DATA / 2.0 / 48_000 / 3_600).isBetween(12.4, 12.5);
        assertThat(Integer.toUnsignedLong((int) (WavHeader.MAX_DATA + 36))).isEqualTo(WavHeader.MAX_DATA + 36);
        assertThat(WavHeader.MAX_DATA % WavHeader.BYTES_PER_SAMPLE).isZero();
    }

    @Test
    void reportsAFileThatCannotBeCreated() {
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(() -> TakeRecording.create(folder.resolve("gone/take.wav"), RATE, START))
                .satisfies(e -> assertThat(e.what()).startsWith("cannot be written"));
    }

    @Test
    void repairsASizeOfZeroAndHalfASample() throws Exception {
        Files.write(file(), WavHeader.of(RATE, 0));
        try (RandomAccessFile wav = new RandomAccessFile(file().toFile(), "rw")) {
            wav.seek(WavHeader.BYTES);
            for (int i = 0; i < 700; i++) {
                wav.writeShort(Short.reverseBytes(Audio.sample(i)));
            }
            wav.writeByte(7);
            assertThat(samplesReadByTheJdk(RATE)).isEmpty();
            WavHeader.repair(wav);
        }
        assertThat(samplesReadByTheJdk(RATE)).hasSize(700).satisfies(this::areInPlace);
        assertThat(file()).hasSize(WavHeader.BYTES + 1_400);
    }

    @Test
    void leavesFilesThatAreNotItsOwnAsTheyAre() throws IOException {
        byte[] stereo = WavHeader.of(RATE, 0);
        stereo[22] = 2;
        for (byte[] other : new byte[][] {new byte[0], new byte[43], new byte[4_000], stereo}) {
            Files.write(file(), other);
            try (RandomAccessFile wav = new RandomAccessFile(file().toFile(), "rw")) {
                WavHeader.repair(wav);
            }
            assertThat(file()).hasBinaryContent(other);
        }
    }

    private Path file() {
        return folder.resolve("take-001.wav");
    }

    private short[] samplesReadByTheJdk(int rate) throws IOException, UnsupportedAudioFileException {
        try (AudioInputStream in = AudioSystem.getAudioInputStream(file().toFile())) {
            AudioFormat format = in.getFormat();
            assertThat(format.matches(new AudioFormat(rate, 16, 1, true, false)))
                    .isTrue();
            byte[] bytes = in.readAllBytes();
            assertThat(bytes.length).isEqualTo(2L * in.getFrameLength());
            short[] samples = new short[bytes.length / 2];
            ByteBuffer.wrap(bytes)
                    .order(ByteOrder.LITTLE_ENDIAN)
                    .asShortBuffer()
                    .get(samples);
            return samples;
        }
    }

    private void areInPlace(short[] samples) {
        for (int i = 0; i < samples.length; i++) {
            assertThat(samples[i]).as("sample %d", i).isEqualTo(Audio.sample(i));
        }
    }

    /** Notes the size of the sound, as the header gives it, each time that the file is forced. */
    private static final class ForcedSizes implements TakeRecording.Opener {
        private static final int SIZE_AT = 40;

        private final List<Integer> sizes = new ArrayList<>();
        private boolean gone;

        @Override
        public RandomAccessFile open(Path file) throws IOException {
            return new RandomAccessFile(file.toFile(), "rw");
        }

        @Override
        public void force(RandomAccessFile file) throws IOException {
            if (gone) {
                throw new IOException("Input/output error");
            }
            file.seek(SIZE_AT);
            sizes.add(Integer.reverseBytes(file.readInt()));
        }
    }

    /** Takes so many bytes and no more, and as a disk does, what still fits of the write that fails. */
    private static final class FullDisk extends RandomAccessFile {
        private long room;

        FullDisk(File file, long room) throws IOException {
            super(file, "rw");
            this.room = room;
        }

        @Override
        public void write(byte[] bytes) throws IOException {
            write(bytes, 0, bytes.length);
        }

        @Override
        public void write(byte[] bytes, int offset, int length) throws IOException {
            int fits = (int) Math.max(0, Math.min(length, room - getFilePointer()));
            super.write(bytes, offset, fits);
            if (fits < length) {
                throw new IOException("No space left on device");
            }
        }
    }
}
