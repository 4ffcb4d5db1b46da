package org.bookholder.film.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.film.FilmedReading;
import org.bookholder.film.plan.Heard;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a film takes of a file's sound. */
final class SoundPiecesTest {
    private static final int RATE = 48_000;

    @TempDir
    private Path folder;

    /** A cable with one side inverted is a common fault: in the mix of both sides nothing is left. Common practice. */
    @Test
    void aVoiceThatIsLostInTheMixIsTakenFromItsOwnChannel() throws ProblemException {
        short[] said = FilmedReading.sound(0, FilmedReading.SECONDS);
        Path inverted = Ffmpeg.make(
                folder.resolve("inverted.wav"),
                "-i",
                Wav.write(folder.resolve("said.wav"), RATE, said).toString(),
                "-af",
                "pan=stereo|c0=c0|c1=-1*c0",
                "-c:a",
                "pcm_s16le");
        SoundPieces pieces = SoundPieces.of(
                new Heard.Source(inverted, Optional.empty()),
                List.of(new SoundPieces.Range(RATE, 3 * RATE)),
                folder.resolve("pieces.f32"),
                decoded -> {});
        for (int i = RATE; i < 3 * RATE; i += 100) {
            assertThat(Math.round(pieces.at(i) * 32_768)).as("sample %d", i).isEqualTo(said[i]);
        }
    }
}
