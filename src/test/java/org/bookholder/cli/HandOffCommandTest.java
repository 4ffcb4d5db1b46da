package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.s;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.film.FilmedReading;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.source.RecordedLines;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeEnd;
import org.bookholder.testing.ChildJvm;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Hand-offs of sessions in every state, and requests that must be refused. */
final class HandOffCommandTest {
    private static final SessionEvent OPENED = new SessionEvent.Opened(
            s(0), MORNING, "Lesson", "lesson.md", "Hello, and welcome.\n\nToday we look at one tired wheel.\n");

    private static final List<SessionEvent> READ = List.of(
            OPENED,
            new SessionEvent.TakeStarted(s(0), 1, MORNING, "a microphone", ReadingPosition.START),
            new SessionEvent.TakeEnded(s(9), 1, MORNING.plusSeconds(9), TakeEnd.CUT),
            new SessionEvent.TakeSettled(s(9), 1, List.of(complete(1, 1, 1, 3, 1, 2.5)), List.of()));

    @TempDir
    private Path folder;

    private Program program;
    private Path session;

    @BeforeEach
    void name() {
        program = new Program(folder);
        session = folder.resolve("session");
    }

    @Test
    void aSessionWithoutRecordingsIsHandedOffWithoutSound() throws Exception {
        keep(READ);
        assertThat(program.run("handoff", session.toString())).isZero();
        assertThat(program.err()).contains("no take was recorded; the files that need sound are left out");
        assertThat(program.out()).startsWith("Cut: 1 clip, 1 gap (line 2), 00:00:");
        assertThat(files())
                .containsExactlyInAnyOrder(
                        "lesson-pickups.csv",
                        "lesson-pickups.pdf",
                        "lesson-pickups.json",
                        "pickups.schema.json",
                        "lesson-log.csv",
                        "lesson-transcript.txt",
                        "lesson.vtt",
                        "lesson.srt",
                        "lesson.edl",
                        "lesson.otio",
                        "lesson-cut.csv");
        assertThat(program.run("handoff", session.toString(), "--only", "takes", "--out", program.path("sound")))
                .isEqualTo(2);
        assertThat(program.err()).containsPattern("take-001.wav: the recording of take 1 is missing; leave ");
        assertThat(folder.resolve("sound").toFile().list()).isNullOrEmpty();
    }

    /** A version that made one line of two sentences wrote this. */
    @Test
    void theLinesOfAnOlderVersionAreHandedOffAsTheyWereRead() throws Exception {
        String text = "Hello, and welcome. This is a wheel.\n\nToday we look at one tired wheel.\n";
        RecordedLines lines = new RecordedLines(List.of(
                List.of("Hello,", "and", "welcome.", "This", "is", "a", "wheel."),
                List.of("Today", "we", "look", "at", "one", "tired", "wheel.")));
        keep(List.of(
                new SessionEvent.Opened(s(0), MORNING, "Lesson", "lesson.md", text, lines),
                READ.get(1),
                READ.get(2),
                new SessionEvent.TakeSettled(
                        s(9), 1, List.of(complete(1, 1, 1, 7, 1, 4), complete(1, 2, 2, 7, 5, 8)), List.of())));
        assertThat(program.run("handoff", session.toString(), "--only", "captions"))
                .as(program.err())
                .isZero();
        assertThat(Files.readString(session.resolve("handoff/lesson-transcript.txt")))
                .contains("Hello, and welcome. This is a wheel.", "Today we look at one tired wheel.")
                .doesNotContain("not read");
        assertThat(program.out()).contains(", 0 gaps, ");
    }

    @Test
    void aSessionInWhichNothingWasReadIsAllGaps() throws Exception {
        keep(List.of(OPENED));
        assertThat(program.run("handoff", session.toString(), "--only", "edl,captions"))
                .isZero();
        assertThat(Files.readString(session.resolve("handoff/lesson.edl")))
                .contains("001  BL ", "pickup, line 2, not read yet");
        assertThat(Files.readString(session.resolve("handoff/lesson.vtt"))).isEqualTo("WEBVTT\n");
    }

    @Test
    void aSessionThatWasNeverOpenedIsRefused() throws Exception {
        keep(List.of());
        assertThat(program.run("handoff", session.toString())).isEqualTo(2);
        assertThat(program.err()).contains("nothing was read in this session yet; name another session");
        assertThat(program.run("handoff", program.path("nowhere"))).isEqualTo(2);
        assertThat(program.err().lines()).hasSize(1);
    }

    /** The title names the files; an editor must not find two cut lists of one lesson. */
    @Test
    void aReplacedHandOffLeavesNothingOfTheOneBeforeAndWhatOthersPutThere() throws Exception {
        Path course = Files.createDirectories(folder.resolve("course"));
        Path lesson = Files.writeString(course.resolve("lesson-1.md"), FilmedReading.TEXT);
        Files.writeString(course.resolve("course.yaml"), "title: A course\n");
        FilmedReading.write(course.resolve("sessions/first"), lesson.toString());
        Path out = folder.resolve("out");
        String[] all = {"handoff", lesson.toString(), "--only", "edl,cut,captions", "--out", out.toString()};
        assertThat(program.run(all)).as(program.err()).isZero();
        assertThat(out.resolve("noise-to-be-cut.edl")).exists();
        Files.writeString(out.resolve("noise-to-be-cut-mine.edl"), "of the editor's own");
        Files.writeString(out.resolve("noise-to-be-cut-cut.csv"), "changed by the editor");

        Files.writeString(lesson, FilmedReading.TEXT.replace("Noise to be cut", "Another title"));
        assertThat(program.run("handoff", lesson.toString(), "--only", "edl,cut", "--replace", "--out", out.toString()))
                .as(program.err())
                .isZero();
        assertThat(out.resolve("another-title.edl")).exists();
        assertThat(out.resolve("noise-to-be-cut.edl")).doesNotExist();
        assertThat(out.resolve("noise-to-be-cut-sessions.txt")).doesNotExist();
        assertThat(out.resolve("noise-to-be-cut-mine.edl")).hasContent("of the editor's own");
        assertThat(out.resolve("noise-to-be-cut-cut.csv")).hasContent("changed by the editor");
        assertThat(out.resolve("noise-to-be-cut.vtt"))
                .as("a kind that was not written now")
                .exists();
        assertThat(program.err())
                .contains("of an earlier hand-off, and not written anew: ")
                .contains("noise-to-be-cut.vtt")
                .doesNotContain("noise-to-be-cut.edl");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "null",
                "[null]",
                "[{}]",
                "[{\"kind\": \"edl\", \"file\": \"a\\u0000b\", \"bytes\": 1, \"modified\": \"\"}]",
                "{"
            })
    void damagedNotesOfAnEarlierHandOffStopNone(String notes) throws Exception {
        keep(READ);
        Files.writeString(session.resolve("handoff-files.json"), notes);

        assertThat(program.run("handoff", session.toString(), "--only", "edl"))
                .as(program.err())
                .isZero();
        assertThat(Files.readString(session.resolve("handoff-files.json"))).contains("lesson.edl");
    }

    @Test
    void aLessonOfTwoSessionsIsOneHandOffBesideThem() throws Exception {
        Path course = Files.createDirectories(folder.resolve("course"));
        Path lesson = Files.writeString(course.resolve("lesson-1.md"), FilmedReading.TEXT);
        Files.writeString(course.resolve("course.yaml"), "title: A course\n");
        Path first = course.resolve("sessions/first");
        FilmedReading.write(first, lesson.toString());
        FilmedReading.writePickup(course.resolve("sessions/second"), lesson.toString());
        assertThat(program.run("handoff", lesson.toString(), "--only", "edl,takes"))
                .as(program.err())
                .isZero();
        assertThat(program.err()).isEmpty();
        assertThat(program.out())
                .startsWith("Cut: 4 clips, 0 gaps, ")
                .contains("\nTake 2: take 1 of the session second, of 2026-01-06 09:00\n");
        assertThat(course.resolve("sessions/second-handoff").toFile().list())
                .containsExactlyInAnyOrder(
                        "noise-to-be-cut-sessions.txt",
                        "noise-to-be-cut.edl",
                        "noise-to-be-cut-take-001.wav",
                        "noise-to-be-cut-take-002.wav");
        assertThat(program.run("handoff", lesson.toString())).isEqualTo(2);
        assertThat(program.err()).contains("the file is there already, and nothing was written");
        assertThat(program.run("handoff", first.toString())).isZero();
        assertThat(program.err()).contains("read in 2 sessions, and this is one of them alone");
        assertThat(program.run("handoff", course.resolve("lesson-2.md").toString()))
                .isEqualTo(2);
        assertThat(program.err().lines()).singleElement().asString().contains("there is no such session or lesson");
    }

    /** Another process reads to the camera while this one hands off. */
    @Test
    void aRunningSessionIsHandedOffAsFarAsItHasBeenRead() throws Exception {
        try (SessionFolder running = SessionFolder.create(session, new SessionLocks())) {
            for (SessionEvent event : READ) {
                running.journal().append(event);
            }
            running.journal()
                    .append(new SessionEvent.TakeStarted(
                            s(9), 2, MORNING.plusSeconds(60), "a microphone", new ReadingPosition(2, 1)));
            assertThat(program.run("handoff", session.toString(), "--only", "edl"))
                    .isZero();
            assertThat(program.err()).contains("the session is still running; this is how far it has come");
            assertThat(Files.readString(session.resolve("handoff/lesson.edl")))
                    .contains("001  TAKE001 ", "pickup, line 2, not read yet");
        }
    }

    @Test
    void existingFilesAreReplacedOnlyIfAsked() throws Exception {
        keep(READ);
        assertThat(program.run("handoff", session.toString(), "--only", "edl")).isZero();
        Path edl = Files.writeString(session.resolve("handoff/lesson.edl"), "edited");
        assertThat(program.run("handoff", session.toString())).isEqualTo(2);
        assertThat(program.err())
                .contains("lesson.edl: the file is there already, and nothing was written; "
                        + "name another folder with --out, or replace what is there with --replace");
        assertThat(edl).hasContent("edited");
        assertThat(files()).containsExactly("lesson.edl");
        assertThat(program.run("handoff", session.toString(), "--replace")).isZero();
        assertThat(Files.readString(edl)).startsWith("TITLE: ");
    }

    @Test
    void impossibleRequestsGetOneLine() throws Exception {
        keep(READ);
        assertRefused("there is no kind 'edit'; give some of: pickups, log, captions,", "--only", "edit");
        assertRefused("there is no rate '26'; give one of: 23.976, 24, 25,", "--rate", "26");
        assertRefused("there is no drop-frame timecode at 25 frames a second; ", "--drop-frame");
        assertRefused("'wide' is no size; give width and height, as in 1920x1080", "--delivery", "wide");
        Files.writeString(folder.resolve("file"), "no folder");
        assertRefused("file: the hand-off cannot be written (", "--out", program.path("file"));
        assertThat(session.resolve("handoff")).doesNotExist();
    }

    /** Run as an ordinary user, because the administrator ignores a folder's permissions. */
    @Test
    void aReadOnlyFolderGetsOneLineAndStaysEmpty() throws IOException, InterruptedException, ProblemException {
        keep(READ);
        Path out = Files.createDirectory(folder.resolve("read-only"));
        assertThat(out.toFile().setWritable(false, false)).isTrue();
        List<String> ordinary = Files.isWritable(out)
                ? List.of("setpriv", "--bounding-set=-dac_override,-dac_read_search", "--inh-caps=-all")
                : List.of();
        assumeTrue(
                refuses(ordinary, out), "this user may write everywhere, and setpriv cannot take that from a program");
        for (String place : List.of("", "/deeper")) {
            try (ChildJvm child = ChildJvm.startBy(
                    ordinary,
                    Main.class,
                    "handoff",
                    session.toString(),
                    "--only",
                    "edl,captions",
                    "--out",
                    out + place)) {
                assertThat(child.untilItEnds())
                        .containsExactly(
                                "bookholder: " + out + place + ": the hand-off cannot be written (permission denied); "
                                        + "choose a folder that can be written and has room",
                                "exit status 2");
            }
        }
        assertThat(out).isEmptyDirectory();
    }

    private static boolean refuses(List<String> ordinary, Path out) throws InterruptedException {
        List<String> command = new ArrayList<>(ordinary);
        command.addAll(List.of("test", "!", "-w", out.toString()));
        try {
            return new ProcessBuilder(command).start().waitFor() == 0;
        } catch (IOException e) {
            return false;
        }
    }

    private void assertRefused(String message, String... options) {
        String[] arguments = new String[options.length + 2];
        arguments[0] = "handoff";
        arguments[1] = session.toString();
        System.arraycopy(options, 0, arguments, 2, options.length);
        assertThat(program.run(arguments)).isEqualTo(2);
        assertThat(program.err()).contains(message);
        assertThat(program.err().lines().filter(line -> !line.contains("no take was recorded")))
                .hasSize(1);
    }

    private void keep(List<SessionEvent> events) throws ProblemException {
        try (SessionFolder kept = SessionFolder.create(session, new SessionLocks())) {
            for (SessionEvent event : events) {
                kept.journal().append(event);
            }
        }
    }

    private String[] files() {
        String[] names = session.resolve("handoff").toFile().list();
        return names == null ? new String[0] : names;
    }
}
