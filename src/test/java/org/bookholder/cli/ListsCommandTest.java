package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.bookholder.course.CourseFolder;
import org.bookholder.footage.Footage;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.footage.ffmpeg.FootageFile;
import org.bookholder.footage.ffmpeg.StillFile;
import org.bookholder.journal.FootageNotes;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.StoredExamples;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Lists of a course from the command line; the made-up machine's clock stands at 2026-03-02. */
final class ListsCommandTest {
    @TempDir
    private Path folder;

    private Program program;
    private CourseFolder files;
    private String course;

    @BeforeEach
    void writeCourse() {
        program = new Program(folder);
        files = new CourseFolder(folder.resolve("wheels"));
        files.lesson("hub", "Every wheel begins with its hub.\n\n> Spin the hub.\n\nIt turns.");
        files.file("rim.md", StoredExamples.script("The rim"));
        course = files.path().toString();
    }

    @Test
    void showsAllListsOrOne() {
        assertThat(program.run("lists", course)).isZero();
        assertThat(program.out())
                .contains(
                        "Shots and covers: 0 of 1 done",
                        "Set-up for the day: 0 of 9 done",
                        "What belongs to a launch: ")
                .contains("   1 [ ] Spin the hub.");
        assertThat(program.run("lists", course, "--list", "shots", "--json")).isZero();
        assertThat(program.out()).contains("\"list\" : \"shots\"", "\"text\" : \"Spin the hub.\"");
        assertThat(program.err()).isEmpty();
    }

    @Test
    void whatAPersonSaysStays() {
        changes("--tick", "1");
        changes("--remark", "1:slowly, by its axle");
        changes("--add", "The empty bench", "--lesson", "the rim");
        changes("--add", "A wide shot");
        assertThat(program.out())
                .contains(
                        "Shots and covers: 1 of 3 done",
                        "   1 [x] Spin the hub.",
                        "Remark: slowly, by its axle",
                        "   2 [ ] The empty bench",
                        "Your own");
        changes("--untick", "1");
        changes("--leave-out", "2");
        assertThat(program.out())
                .contains("Shots and covers: 0 of 2 done", "Left out:", "   2 2 \u00b7 The rim: The empty bench");
        changes("--put-back", "2");
        assertThat(program.out()).contains("Shots and covers: 0 of 3 done");
        assertThat(program.run("lists", course, "--list", "launch", "--leave-out", "captions"))
                .isZero();
        assertThat(program.out()).contains("     all of: Captions");
        assertThat(program.run("course", course)).isZero();
        assertThat(program.out()).contains("What belongs to a launch, ").doesNotContain("Captions:");
    }

    private void changes(String... change) {
        String[] all = new String[change.length + 4];
        System.arraycopy(new String[] {"lists", course, "--list", "shots"}, 0, all, 0, 4);
        System.arraycopy(change, 0, all, 4, change.length);
        assertThat(program.run(all)).as(program.err()).isZero();
    }

    @Test
    void writesAPageToPrint() {
        Path page = folder.resolve("lists.html");
        assertThat(program.run("lists", course, "--list", "set-up", "--page", page.toString()))
                .isZero();
        assertThat(page)
                .content()
                .contains("Set-up for the day", "Battery", "</html>")
                .doesNotContain("<script", "http", "Spin the hub");
    }

    @Test
    void aLessonThatIsGoneOnWithIsShownAsItWasInTheLastSession() throws ProblemException {
        Path session = files.path().resolve("sessions/monday");
        StoredExamples.write(session, files.path().resolve("rim.md").toString(), StoredExamples.script("The rim"));
        Path film = Ffmpeg.make(
                folder.resolve("camera.mp4"),
                "-f",
                "lavfi",
                "-i",
                "testsrc=size=1280x720:rate=25:duration=4",
                "-preset",
                "ultrafast");
        Footage footage = FootageFile.look(film);
        StreamTime end = StreamTime.ofSeconds(3);
        FootageNotes.keep(
                session,
                List.of(new PlacedFootage(
                        footage, List.of(new Placement(1, StreamTime.ZERO, 0, 0, StreamTime.ZERO, end, 1)))));
        assertThat(program.run("lists", course, "--list", "set-up")).isZero();
        assertThat(program.out())
                .contains("As in the last session", "The rim: clothes, hair, light and framing", "by camera.mp4")
                .containsPattern("Picture of .*: .*still-[0-9a-f]{8}\\.jpg");
        Path still = session.resolve("film").toFile().listFiles()[0].toPath();
        assertThat(StillFile.look(still).width()).isEqualTo(640);
        assertThat(StillFile.look(still).height()).isEqualTo(360);
        assertThat(session.resolve("film").toFile().list()).hasSize(1);
    }

    @Test
    void impossibleRequestsGetOneLine() {
        refuses("there is no list 'props'", "--list", "props");
        refuses("it is not said which list is meant", "--tick", "1");
        refuses("the list has no number 7", "--list", "shots", "--tick", "7");
        refuses("the list has no part 'cakes'", "--list", "launch", "--leave-out", "cakes");
        refuses("it is not said which item the remark is about", "--list", "shots", "--remark", "slowly");
        refuses("nothing is written for the list", "--list", "shots", "--add", " ");
        refuses("nothing is added to a lesson", "--list", "shots", "--lesson", "hub");
        refuses("the course has no lesson 'tyre'", "--list", "shots", "--add", "It", "--lesson", "tyre");
        assertThat(files.path().resolve("lists.json")).doesNotExist();
    }

    private void refuses(String message, String... options) {
        String[] all = new String[options.length + 2];
        System.arraycopy(new String[] {"lists", course}, 0, all, 0, 2);
        System.arraycopy(options, 0, all, 2, options.length);
        assertThat(program.run(all)).isEqualTo(2);
        assertThat(program.err()).startsWith("bookholder: ").contains(message).hasLineCount(1);
    }
}
