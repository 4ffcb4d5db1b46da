package org.bookholder.delivery;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.CheckedFilm;
import org.bookholder.testing.Ffmpeg;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The demo's reading, exported as AAC with and without the band above that of a telephone. */
@Execution(ExecutionMode.CONCURRENT)
final class BandFinderTest {
    private static final Path READING =
            Path.of(System.getProperty("bookholder.home")).resolve("demo-scripts/lesson-1.wav");

    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"96k", "192k"})
    void aVoiceThroughATelephoneIsFound(String bitRate) throws ProblemException {
        // By way of 8 kHz, as in a call.
        assertThat(found("aresample=8000,aresample=48000", bitRate)).containsExactly(BandFinder.KIND);
    }

    @ParameterizedTest
    @ValueSource(strings = {"96k", "192k"})
    void aWholeVoiceIsRight(String bitRate) throws ProblemException {
        assertThat(found("aresample=48000", bitRate)).isEmpty();
        assertThat(found("aresample=48000,highshelf=f=4000:g=-10", bitRate)).isEmpty();
    }

    @Test
    void aShortSoundIsNotJudged() throws ProblemException {
        assertThat(found("atrim=0:3,aresample=8000,aresample=48000", "128k")).isEmpty();
    }

    private List<String> found(String filter, String bitRate) throws ProblemException {
        Path export = Ffmpeg.make(
                folder.resolve("export.m4a"),
                "-t",
                "20",
                "-i",
                READING.toString(),
                "-af",
                filter,
                "-c:a",
                "aac",
                "-b:a",
                bitRate);
        return CheckedFilm.of(export, ProfileForm.usual()).findings().stream()
                .map(Finding::kind)
                .filter(BandFinder.KIND::equals)
                .toList();
    }
}
