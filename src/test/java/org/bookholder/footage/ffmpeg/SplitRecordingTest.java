package org.bookholder.footage.ffmpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bookholder.footage.Footage;
import org.bookholder.footage.RecordingJoiner;
import org.bookholder.footage.WholeRecording;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioRead;
import org.bookholder.testing.Ffmpeg;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Recordings of the demo's reading that FFmpeg's own program cut into files, in the middle of words. */
final class SplitRecordingTest {
    private static final String READING = Path.of(System.getProperty("bookholder.home", ""))
            .resolve("demo-scripts/lesson-1.wav")
            .toString();

    /**
     * Where it is cut, in seconds; by {@code lesson-1.reading.json} somebody speaks then. The first second is left out: FFmpeg cannot copy
     * the beginning of AAC in step, where the encoder runs in.
     */
    private static final double[] CUTS = {1, 5.88, 11.6, 18.4};

    private static final Instant BEGAN = Instant.parse("2026-03-01T09:00:00Z");
    private static final int RATE = FootageSource.RATE;

    /** FFmpeg notes in thousandths of a second where the sound of an MP4 or MOV file begins beside its picture. */
    private static final int MILLISECOND = RATE / 1000;

    /** Blocks of AAC overlap by half, 1024 samples (ISO/IEC 14496-3): of a file's first one a part cannot be decoded. */
    private static final int RUN_IN = 2 * 1024;

    @TempDir
    private Path folder;

    /** What is stored is copied, or each file is encoded for itself. */
    @ParameterizedTest
    @CsvSource({"mov, pcm_s16le, copy", "mov, pcm_s16le, pcm_s16le", "mp4, aac, copy", "mp4, aac, aac"})
    void soundsAsIfItHadNotBeenSplit(String kind, String codec, String again) throws ProblemException {
        Path whole = whole(kind, codec);
        List<Footage> files = new ArrayList<>();
        for (int i = 2; i >= 0; i--) {
            files.add(part(whole, i, kind, again, began(i)));
        }
        List<WholeRecording> recordings = new RecordingJoiner(new SoundBorder(), false).join(files);
        assertThat(recordings).extracting(WholeRecording::name).containsExactly("C0001." + kind + " to C0003." + kind);
        short[] heard = read(recordings.get(0));
        short[] all = read(WholeRecording.of(FootageFile.look(whole)));
        short[] asWhole = Arrays.copyOfRange(all, (int) (CUTS[0] * RATE), all.length);
        for (int i = 1; i <= 2; i++) {
            int at = (int) Math.round((CUTS[i] - CUTS[0]) * RATE);
            int before = late(heard, asWhole, at - RATE / 5, RATE / 5);
            int after = late(heard, asWhole, at, RATE / 5);
            assertThat(List.of(before, after))
                    .as("cut " + i)
                    .allSatisfy(late -> assertThat(Math.abs(late)).isLessThanOrEqualTo(MILLISECOND));
            assertThat(difference(heard, asWhole, at - RATE / 5, before))
                    .as("before cut " + i)
                    .isLessThan(0.3);
            assertThat(difference(heard, asWhole, at + RUN_IN, after))
                    .as("after cut " + i)
                    .isLessThan(0.3);
        }
    }

    @Test
    void aPauseOfTenSecondsIsNoOneRecording() throws ProblemException {
        Path whole = whole("mp4", "aac");
        List<Footage> files =
                List.of(part(whole, 0, "mp4", "copy", BEGAN), part(whole, 1, "mp4", "copy", began(1).plusSeconds(10)));
        assertThat(new RecordingJoiner(new SoundBorder(), false).join(files)).hasSize(2);
    }

    /** As when the sound was switched off between two files that the clock alone would join. */
    @Test
    void digitalSilenceIsNotTakenForTheSameSound() throws ProblemException {
        Path whole = whole("mp4", "aac");
        Footage first = part(whole, 0, "mp4", "copy", BEGAN);
        Footage second = FootageFile.look(Ffmpeg.make(
                folder.resolve("C0002.mp4"),
                "-i",
                whole.toString(),
                "-c:v",
                "copy",
                "-af",
                "volume=0",
                "-c:a",
                "aac",
                "-metadata",
                "creation_time=" + began(1)));
        assertThat(new SoundBorder().goesOn(first, second)).isFalse();
        assertThat(new RecordingJoiner(new SoundBorder(), false).join(List.of(first, second)))
                .hasSize(2);
    }

    private static Instant began(int part) {
        return BEGAN.plusMillis(Math.round(1000 * (CUTS[part] - CUTS[0])));
    }

    private Path whole(String kind, String codec) {
        return Ffmpeg.make(
                folder.resolve("whole." + kind),
                "-f",
                "lavfi",
                "-i",
                "testsrc2=size=320x180:rate=25",
                "-i",
                READING,
                "-t",
                Double.toString(CUTS[3]),
                "-c:v",
                "mpeg4",
                "-g",
                "1",
                "-ar",
                "48000",
                "-c:a",
                codec);
    }

    /** A file that the camera numbered and gave its time. */
    private Footage part(Path whole, int number, String kind, String codec, Instant began) throws ProblemException {
        Path parts = folder.resolve("part%d." + kind);
        if (!Files.exists(folder.resolve("part3." + kind))) {
            Ffmpeg.make(
                    parts,
                    "-i",
                    whole.toString(),
                    "-c",
                    "copy",
                    "-f",
                    "segment",
                    "-segment_times",
                    CUTS[0] + "," + CUTS[1] + "," + CUTS[2],
                    "-reset_timestamps",
                    "1");
        }
        List<String> arguments = new ArrayList<>();
        if (codec.equals("copy")) {
            arguments.addAll(List.of(
                    "-i", folder.resolve("part" + (number + 1) + "." + kind).toString(), "-c", "copy"));
        } else {
            arguments.addAll(List.of("-ss", "" + CUTS[number], "-t", "" + (CUTS[number + 1] - CUTS[number])));
            arguments.addAll(List.of("-i", whole.toString(), "-c:v", "mpeg4", "-c:a", codec));
        }
        arguments.addAll(List.of("-metadata", "creation_time=" + began));
        Path file = folder.resolve("C000" + (number + 1) + "." + kind);
        return FootageFile.look(Ffmpeg.make(file, arguments.toArray(String[]::new)));
    }

    private static short[] read(WholeRecording recording) throws ProblemException {
        short[] all = new short[60 * RATE];
        int count = 0;
        try (FootageSource source = FootageSource.open(recording)) {
            while (source.read() instanceof AudioRead.Samples read) {
                short[] samples = read.block().samples();
                assertThat(read.block().start().samples(RATE)).isEqualTo(count);
                System.arraycopy(samples, 0, all, count, samples.length);
                count += samples.length;
            }
        }
        return Arrays.copyOf(all, count);
    }

    /** By how many samples a stretch comes late, as it agrees best. */
    private static int late(short[] heard, short[] whole, int from, int count) {
        int best = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (int lag = -1000; lag <= 1000; lag++) {
            double product = 0;
            double power = 1;
            for (int i = from; i < from + count; i++) {
                product += (double) heard[i + lag] * whole[i];
                power += (double) heard[i + lag] * heard[i + lag];
            }
            double alike = product / Math.sqrt(power);
            if (alike > most) {
                most = alike;
                best = lag;
            }
        }
        return best;
    }

    /** The root mean square of the difference over a fifth of a second, beside that of the sound. */
    private static double difference(short[] heard, short[] whole, int from, int late) {
        double off = 0;
        double all = 0;
        for (int i = from; i < from + RATE / 5; i++) {
            off += Math.pow(heard[i + late] - whole[i], 2);
            all += Math.pow(whole[i], 2);
        }
        return Math.sqrt(off / all);
    }
}
