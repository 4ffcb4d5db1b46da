package org.bookholder.footage.ffmpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.bookholder.footage.Footage;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.timing.FrameRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a file tells of its picture. */
final class FootageFileTest {
    @TempDir
    private Path folder;

    /** As a divided recording may end: the mean rate of such a file is 25.15. */
    @Test
    void aLastPictureThatIsCutShortDoesNotChangeTheRate() throws ProblemException {
        Path whole = Ffmpeg.make(
                folder.resolve("whole.mp4"),
                "-f",
                "lavfi",
                "-i",
                "testsrc2=size=320x180:rate=25",
                "-frames:v",
                "100",
                "-c:v",
                "libx264");
        Path file = Ffmpeg.make(
                folder.resolve("short.mp4"),
                "-i",
                whole.toString(),
                "-c",
                "copy",
                "-bsf:v",
                "setts=duration=if(eq(N\\,99)\\,200\\,512)");
        Footage.Picture picture = FootageFile.look(file).picture().orElseThrow();
        assertThat(picture.rate()).isEqualTo(FrameRate.FPS_25);
        assertThat(picture.variable()).isFalse();
    }
}
