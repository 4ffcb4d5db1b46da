package org.bookholder.footage.ffmpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.bookholder.footage.Channels;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Ffmpeg;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which channel a voice is followed by, in files made by FFmpeg's own program. */
final class VoiceChannelTest {
    private static final String READING = Path.of(System.getProperty("bookholder.home", ""))
            .resolve("demo-scripts/lesson-1.wav")
            .toString();

    @TempDir
    private Path folder;

    /** The channel of low effects in FFmpeg's layouts: the third of 2.1, the fourth of 5.1 and 7.1. */
    @ParameterizedTest
    @CsvSource({
        "recorder.wav, 2.1, 3, pcm_s24le",
        "recorder.mov, 5.1, 6, pcm_s16be",
        "recorder.m4a, 5.1, 6, alac",
        "recorder.mkv, 7.1, 8, libopus"
    })
    void aVoiceOnAnyChannelIsHeardInTheMix(String name, String layout, int channels, String codec)
            throws ProblemException {
        for (int voice = 0; voice < channels; voice++) {
            Path file = recorder(name, layout, channels, voice, "0", codec);
            double share = peak(file, Channels.ALL) / peak(file, Channels.one(voice + 1));
            assertThat(share).as("channel %d of %s", voice + 1, layout).isBetween(0.7 / channels, 1.4 / channels);
        }
    }

    @Test
    void theMixIsFollowedUnlessAVoiceIsLostInIt() throws ProblemException {
        Path both = Ffmpeg.make(
                folder.resolve("both.mp4"),
                "-i",
                READING,
                "-t",
                "20",
                "-af",
                "pan=stereo|c0=c0|c1=0.7*c0",
                "-c:a",
                "aac");
        assertThat(VoiceChannel.of(both)).isEqualTo(Channels.ALL);
        Path inverted = Ffmpeg.make(
                folder.resolve("inverted.mov"),
                "-i",
                READING,
                "-t",
                "20",
                "-af",
                "pan=stereo|c0=c0|c1=-1*c0",
                "-c:a",
                "pcm_s16le");
        assertThat(VoiceChannel.of(inverted)).isEqualTo(Channels.one(1));
    }

    /** The room's microphones of a recorder are open, and louder than the one at the voice. */
    @Test
    void aVoiceThatOtherChannelsDrownIsFollowedByItsOwn() throws ProblemException {
        assertThat(VoiceChannel.of(recorder("noisy.wav", "3.1", 4, 3, "0.1", "pcm_s16le")))
                .isEqualTo(Channels.one(4));
        assertThat(VoiceChannel.of(recorder("noisy.mkv", "5.1", 6, 1, "0.1", "flac")))
                .isEqualTo(Channels.one(2));
    }

    /** Three streams of one channel without a picture: the last begins half a second after the others. */
    @Test
    void streamsLieBesideEachOtherByTheirTimesAndAreHeardAlone() throws ProblemException {
        Path file = Ffmpeg.make(
                folder.resolve("streams.mov"),
                "-f",
                "lavfi",
                "-i",
                "sine=r=16000:d=2",
                "-itsoffset",
                "0.5",
                "-f",
                "lavfi",
                "-i",
                "sine=r=16000:d=2",
                "-map",
                "0:a",
                "-map",
                "0:a",
                "-map",
                "1:a",
                "-c:a",
                "pcm_s16le");
        assertThat(firstSound(file, Channels.one(1))).isLessThan(100);
        assertThat(firstSound(file, Channels.one(3))).isBetween(8000, 8100);
        assertThat(peak(file, new Channels(1, 2, true))).isZero();
        assertThat(peak(file, new Channels(1, 2, false))).isEqualTo(peak(file, Channels.one(2)));
    }

    /** The first sample that is not silent. */
    private static int firstSound(Path file, Channels heard) throws ProblemException {
        int before = 0;
        try (FootageSound sound = FootageSound.open(file, 16_000, heard)) {
            for (var piece = sound.read(); piece.isPresent(); piece = sound.read()) {
                for (short sample : piece.get()) {
                    if (sample != 0) {
                        return before;
                    }
                    before++;
                }
            }
        }
        return before;
    }

    private Path recorder(String name, String layout, int channels, int voice, String noise, String codec) {
        StringBuilder pan = new StringBuilder("[0:a][1:a]amerge=inputs=2,pan=" + layout);
        for (int channel = 0; channel < channels; channel++) {
            pan.append("|c").append(channel).append(channel == voice ? "=c0" : "=" + noise + "*c1");
        }
        return Ffmpeg.make(
                folder.resolve(name),
                "-i",
                READING,
                "-f",
                "lavfi",
                "-i",
                "anoisesrc=r=16000:a=1:d=20:seed=3",
                "-t",
                "20",
                "-filter_complex",
                pan.toString(),
                "-ar",
                "48000",
                "-c:a",
                codec);
    }

    private static double peak(Path file, Channels heard) throws ProblemException {
        double peak = 0;
        try (FootageSound sound = FootageSound.open(file, 16_000, heard)) {
            for (var piece = sound.read(); piece.isPresent(); piece = sound.read()) {
                for (short sample : piece.get()) {
                    peak = Math.max(peak, Math.abs(sample));
                }
            }
        }
        return peak;
    }
}
