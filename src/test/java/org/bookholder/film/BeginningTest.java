package org.bookholder.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.bookholder.testing.Readings.s;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.film.format.Encoding;
import org.bookholder.film.format.FilmFormat;
import org.bookholder.film.format.SoundEncoding;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.film.plan.Heard;
import org.bookholder.film.plan.Shot;
import org.bookholder.film.plan.Track;
import org.bookholder.footage.ffmpeg.PictureFile;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.FrameRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What can be seen of a draft while it is being made. */
final class BeginningTest {
    private static final int CLIP = 100;

    @TempDir
    private Path folder;

    @Test
    void itGrowsByNearlyTwiceEachTimeAndGoesAtTheEnd() throws ProblemException, IOException {
        Path left = Files.writeString(folder.resolve("begun-2.mp4"), "left by a killed run");
        List<Double> made = new ArrayList<>();
        FilmOrder order = order(List.of(clip(1, 0), clip(2, 900)), folder.resolve("a.mp4"));
        try (Beginning beginning = new Beginning(order, folder, (clips, seconds) -> {
            made.add(seconds);
            return Files.writeString(folder.resolve("put-together.mp4"), "film");
        })) {
            assertThat(left).doesNotExist();
            for (int frames = 25; frames <= 1000; frames += 25) {
                beginning.ready(List.of(), frames);
            }
            assertThat(made).containsExactly(4.0, 8.0, 15.0, 27.0);
            assertThat(folder.toFile().list())
                    .containsExactlyInAnyOrder("begun-1.mp4", "begun-2.mp4", "begun-3.mp4", "begun-4.mp4");
        }
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void aDraftCanBeSeenBeforeItIsWhole() throws ProblemException {
        Path camera = Ffmpeg.make(
                folder.resolve("camera.mp4"),
                "-f",
                "lavfi",
                "-i",
                "testsrc2=s=640x360:r=25",
                "-f",
                "lavfi",
                "-i",
                "anoisesrc=a=0.1:r=48000",
                "-t",
                "25",
                "-c:v",
                "libx264",
                "-preset",
                "ultrafast",
                "-c:a",
                "aac",
                "-pix_fmt",
                "yuv420p");
        List<FilmClip> clips = clips(camera);
        Path seen = folder.resolve("seen.mp4");
        Path begun = folder.resolve("begun-1.mp4");
        FilmMade made = new FilmMaker(order(clips, folder.resolve("draft.mp4")), Optional.empty(), 2, part -> {
                    if (Files.exists(begun) && !Files.exists(seen)) {
                        copy(begun, seen);
                    }
                })
                .make();
        FilmReadBack beginning = FilmReadBack.of(seen, folder);
        assertThat(beginning.pictures()).isBetween(CLIP, 5 * CLIP);
        assertThat(beginning.pictures() % CLIP).as("whole clips").isZero();
        assertThat(beginning.samples() / 48_000.0).isCloseTo(beginning.pictures() / 25.0, within(0.05));
        assertThat(FilmReadBack.of(made.file(), folder).pictures()).isEqualTo(6 * CLIP);
        assertThat(begun).doesNotExist();
    }

    /** Six clips of four seconds. */
    private static List<FilmClip> clips(Path camera) throws ProblemException {
        List<FilmClip> clips = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            Shot shot = new Shot(camera, PictureFile.look(camera), true, (long) i * CLIP, 100);
            Heard heard = new Heard(camera, Track.Kind.CAMERA, Optional.empty(), i * 4 * 48_000.0, 1);
            clips.add(new FilmClip(
                    i + 1,
                    i + 1,
                    0,
                    1,
                    s(4 * i),
                    s(4 * i + 4),
                    (long) i * CLIP,
                    CLIP,
                    Optional.of(shot),
                    Optional.of(heard),
                    List.of()));
        }
        return clips;
    }

    private static void copy(Path from, Path to) {
        try {
            Files.copy(from, to);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private FilmOrder order(List<FilmClip> clips, Path wanted) {
        FilmFormat format = new FilmFormat(
                "mp4",
                Encoding.H264,
                "yuv420p",
                640,
                360,
                FrameRate.FPS_25,
                4000,
                SoundEncoding.AAC,
                128,
                48_000,
                2,
                -16,
                -1);
        FilmPlan plan = new FilmPlan(FrameRate.FPS_25, clips);
        return new FilmOrder(
                plan,
                format,
                Scripts.of("One.", "Two.", "Three.", "Four.", "Five.", "Six."),
                true,
                wanted,
                Optional.of(folder));
    }

    private static FilmClip clip(int line, long start) {
        return new FilmClip(
                line,
                line,
                0,
                0,
                s(0),
                s(0),
                start,
                line == 1 ? 900 : 200,
                Optional.empty(),
                Optional.empty(),
                List.of());
    }
}
