package org.bookholder.app.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.s;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.film.FilmReadBack;
import org.bookholder.film.FilmedReading;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.footage.ffmpeg.FootageFile;
import org.bookholder.journal.FootageNotes;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.StoredExamples;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A film of a take that its camera split into two files while a line was read. */
final class SplitCameraFilmTest {
    /** The camera was switched on so many seconds before the take. */
    private static final double BEFORE = 1.51;

    /** Where the second file begins, in pictures; the second line is read from 3.4 to 5.2 s of the take. */
    private static final int SPLIT = 146;

    private static final int RATE = 48_000;

    @TempDir
    private Path folder;

    @Test
    void aLineOverTheBorderIsCutFromBothFiles() throws ProblemException, IOException {
        short[] sound = FilmedReading.sound(BEFORE, 21);
        Path whole = FilmedReading.camera(folder.resolve("whole.mp4"), BEFORE);
        Path first = cut(whole, "C0001.MP4", "-t", seconds());
        Path second = cut(whole, "C0002.MP4", "-ss", seconds());
        Path session = folder.resolve("session");
        FilmedReading.write(session, folder.resolve("lesson.md").toString());
        StreamTime border = s(SPLIT / 25.0 - BEFORE);
        FootageNotes.keep(
                session,
                List.of(
                        placed(first, Math.round(BEFORE * RATE), s(0), border),
                        placed(second, -border.ticks(), border, s(FilmedReading.SECONDS))));

        FilmResult result = film(session);
        FilmReadBack film = FilmReadBack.of(result.made().file(), folder);

        List<FilmClip> clips = result.plan().clips();
        assertThat(clips.stream()
                        .map(clip -> clip.shot().orElseThrow().file().getFileName() + " " + clip.firstLine() + "-"
                                + clip.lastLine()))
                .startsWith("C0001.MP4 1-2", "C0002.MP4 2-2");
        for (FilmClip clip : clips) {
            int inWhole = inWhole(clip);
            assertThat(film.numbers(
                            clip.start(), clip.end(), clip.shot().orElseThrow().scale() / 100.0))
                    .as("pictures of lines %d to %d", clip.firstLine(), clip.lastLine())
                    .isEqualTo(IntStream.range(inWhole, inWhole + (int) clip.frames())
                            .boxed()
                            .toList());
            long at = result.plan().tickOf(clip.start());
            assertThat(film.late(at + 9600, sound, inWhole * RATE / 25.0 + 9600, 4800))
                    .as("sound of lines %d to %d", clip.firstLine(), clip.lastLine())
                    .isBetween(-48, 48);
        }
        assertThat(clips.get(0).shot().orElseThrow().first() + clips.get(0).frames())
                .as("the first file is used to its end, and no further")
                .isEqualTo(SPLIT);
        long border1 = result.plan().tickOf(clips.get(1).start());
        assertThat(film.late(border1 - 2400, sound, SPLIT * RATE / 25.0 - 2400, 4800))
                .as("sound on both sides of the border")
                .isBetween(-48, 48);
    }

    private static int inWhole(FilmClip clip) {
        String name = clip.shot().orElseThrow().file().getFileName().toString();
        return (int) clip.shot().orElseThrow().first() + (name.equals("C0002.MP4") ? SPLIT : 0);
    }

    private static String seconds() {
        return Double.toString(SPLIT / 25.0);
    }

    private Path cut(Path whole, String name, String option, String value) {
        return Ffmpeg.make(
                folder.resolve(name),
                option,
                value,
                "-i",
                whole.toString(),
                "-c:v",
                "libx264",
                "-preset",
                "ultrafast",
                "-c:a",
                "aac");
    }

    private static PlacedFootage placed(Path file, long start, StreamTime from, StreamTime to) throws ProblemException {
        return new PlacedFootage(FootageFile.look(file), List.of(new Placement(1, s(0), start, 0, from, to, 1)));
    }

    private FilmResult film(Path session) throws ProblemException, IOException {
        Environment here = StoredExamples.here(folder);
        return new FilmService(here, SmallFilm.of(session, folder), progress -> {}, Interruption.NONE)
                .make(FilmObstacle.Told.TERMINAL, obstacle -> {});
    }
}
