package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.film.FilmedReading;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Ffmpeg;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A lesson whose film cannot be made, for several reasons at once. */
final class FilmCommandTest {
    private static final double BEFORE = 1.51;

    @TempDir
    private Path folder;

    private Path lesson;
    private Path gone;
    private Program program;

    @BeforeEach
    void write() throws ProblemException, IOException {
        Path course = Files.createDirectories(folder.resolve("course"));
        lesson = Files.writeString(
                course.resolve("lesson-1.md"),
                FilmedReading.TEXT
                        .replace("right behind", "right ![a red field](red.png) behind")
                        .replace("Five comes", "![](screen.mp4) Five comes"));
        Files.writeString(course.resolve("screen.mp4"), "no film");
        Files.writeString(course.resolve("course.yaml"), "title: A course\ndelivery: wanted.txt\n");
        FilmedReading.smallProfile(course.resolve("wanted.txt"), 180);
        Path session = course.resolve("sessions/first");
        FilmedReading.writeWithGap(session, lesson.toString());
        gone = FilmedReading.camera(folder.resolve("C0001.MP4"), BEFORE);
        FilmedReading.match(session, gone, BEFORE, 0);
        program = new Program(folder);
    }

    @Test
    void tellsAllThatStandsInTheWayAtOnceEachOnALineOfItsOwn() throws IOException {
        Files.delete(gone);
        assertThat(program.run("film", lesson.toString())).isEqualTo(2);
        List<String> said = program.err().lines().toList();
        assertThat(said).hasSize(4).allMatch(line -> line.startsWith("bookholder: "));
        assertThat(said.get(0))
                .contains("C0001.MP4 is not where it was matched any more (session first)")
                .endsWith(
                        "put it back, or match it again where it is now, leave the lines out with --leave-out, or make a"
                                + " draft with --draft");
        assertThat(said.get(1))
                .contains(
                        "first: there is nothing to use for line 5; pick them up, leave the lines out with --leave-out");
        assertThat(said.get(2)).contains("lesson-1.md:5: red.png cannot be shown: there is no such file; put a PNG");
        assertThat(said.get(3)).contains("screen.mp4 cannot be shown: ");
        assertThat(folder.resolve("course/exports")).doesNotExist();
    }

    @Test
    void aDraftSaysBeforeItIsMadeWhatTheFilmWillNeed() throws ProblemException {
        assertThat(program.run("film", lesson.toString(), "--draft")).isZero();
        assertThat(program.err())
                .contains("in the way of the finished film: ")
                .contains("there is nothing to use for line 5; pick them up, or leave the lines out with --leave-out\n")
                .contains("red.png cannot be shown: ")
                .doesNotContain("C0001.MP4")
                .doesNotContain("--draft");
        Ffmpeg.make(lesson.resolveSibling("red.png"), "-f", "lavfi", "-i", "color=red:s=400x300", "-frames:v", "1");
        assertThat(program.run("film", lesson.toString(), "--draft")).isZero();
        assertThat(program.err()).doesNotContain("red.png");
    }
}
