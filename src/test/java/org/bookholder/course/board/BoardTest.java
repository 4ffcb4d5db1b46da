package org.bookholder.course.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.course.Course;
import org.bookholder.course.CourseFolder;
import org.bookholder.course.CourseReader;
import org.bookholder.course.EditingProgress;
import org.bookholder.course.ExportChecks;
import org.bookholder.course.FactChecks;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.Sessions;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The stages of a lesson from script to checked export, and back when something is redone. */
final class BoardTest {
    private static final Instant FIRST = Instant.parse("2027-03-01T10:00:00Z");
    private static final Instant LATER = Instant.parse("2027-03-02T10:00:00Z");
    private static final LocalDate TODAY = LocalDate.of(2027, 3, 9);
    private static final String TEXT = "Here is the hub.\nHere is the rim.\nIt costs [$12](check:2027-03).";

    @TempDir
    private Path folder;

    private CourseFolder files;
    private Course course;
    private Lesson lesson;

    @BeforeEach
    void writeLesson() {
        files = new CourseFolder(folder);
        files.lesson("hub", TEXT);
        course = files.read();
        lesson = course.lessons().get(0);
    }

    @Test
    void aScriptIsPlannedOnceItHasADay() throws ProblemException {
        assertThat(board().lessons().get(0).stage()).isEqualTo(LessonStage.SCRIPT);
        LessonState planned = board().planned(n -> Optional.of(TODAY)).lessons().get(0);
        assertThat(planned.stage()).isEqualTo(LessonStage.PLANNED);
        assertThat(planned.next()).isEqualTo("record it on 2027-03-09");
        assertThat(planned.missing()).containsExactly("recording", "edit", "export", "check");
    }

    @Test
    void linesNotReachedAreLeftToRecord() throws ProblemException {
        LessonState state = state(session(FIRST, "c"));
        assertThat(state.stage()).isEqualTo(LessonStage.BEGUN);
        assertThat(state.next()).isEqualTo("record lines 2, 3");
        assertThat(state.missing()).startsWith("recording of 2 lines");
    }

    @Test
    void lessonsAreCountedByOneRule() throws ProblemException {
        Board partly = board(session(FIRST, "m"));
        assertThat(partly.lessons().get(0).stage()).isEqualTo(LessonStage.BEGUN);
        assertThat(partly.recorded()).isZero();
        assertThat(partly.withPickups()).isEqualTo(1);
        Board open = board(session(FIRST, "cmc"));
        assertThat(open.lessons().get(0).stage()).isEqualTo(LessonStage.PICKUPS);
        assertThat(open.recorded())
                .as("every line of a recorded lesson is clean")
                .isZero();
        assertThat(open.withPickups()).isEqualTo(1);
        Board done = board(session(FIRST, "cmc"), session(LATER, "scs"));
        assertThat(done.recorded()).as("over all its sessions").isEqualTo(1);
        assertThat(done.withPickups()).isZero();
    }

    @Test
    void misreadAndSkippedLinesAreToBePickedUp() throws ProblemException {
        LessonState state = state(session(FIRST, "smc"));
        assertThat(state.stage()).isEqualTo(LessonStage.PICKUPS);
        assertThat(state.recording().pickups()).containsExactly(1, 2);
        assertThat(state.missing()).startsWith("2 pickups");
    }

    @Test
    void aLaterSessionPicksUpWhatAnEarlierOneLeft() throws ProblemException {
        LessonState state = state(session(LATER, "cms"), session(FIRST, "mcc"));
        assertThat(state.stage()).isEqualTo(LessonStage.RECORDED);
        assertThat(state.next()).isEqualTo("edit it");
    }

    @Test
    void aLineThatWasRewrittenIsRecordedAgain() throws ProblemException {
        RecordedSession before = session(FIRST, "ccc");
        files.lesson("hub", TEXT.replace("rim", "spoke"));
        course = files.read();
        lesson = course.lessons().get(0);
        assertThat(state(before).recording().unread()).containsExactly(2);
    }

    @Test
    void anEditIsDoneWhenSomeoneSaysSoOrTheExportIsThere() throws ProblemException {
        EditingProgress.none().edited(LATER, lesson, true, 2.5).write(folder);
        LessonState state = state(session(FIRST, "ccc"));
        assertThat(state.stage()).isEqualTo(LessonStage.EDITED);
        assertThat(state.editHours()).hasValue(2.5);
        EditingProgress.read(folder).edited(LATER, lesson, false, 0).write(folder);
        assertThat(state(session(FIRST, "ccc")).stage()).isEqualTo(LessonStage.RECORDED);

        files.export("hub_final.mp4", LATER);
        assertThat(state(session(FIRST, "ccc")).stage()).isEqualTo(LessonStage.EXPORTED);
        assertThat(state(session(FIRST, "ccc")).next()).isEqualTo("check hub_final.mp4");
    }

    @Test
    void aRenamedScriptKeepsItsEditAndItsExports() throws ProblemException, IOException {
        EditingProgress.none().edited(LATER, lesson, true, 2.5).write(folder);
        Path export = files.export("hub_v2.mp4", LATER);
        ExportChecks.keep(folder, export, LATER, List.of());
        files.file("exports/hub.vtt", "costs $12");
        RecordedSession recorded = session(FIRST, "ccc");

        Files.move(folder.resolve("hub.md"), folder.resolve("axle.md"));
        course = files.read();
        lesson = course.lessons().get(0);
        LessonState state = state(recorded);
        assertThat(state.lesson().name()).isEqualTo("axle");
        assertThat(state.editHours()).hasValue(2.5);
        assertThat(state.stage()).isEqualTo(LessonStage.CHECKED);
        assertThat(board(recorded).due().get(0).files()).containsExactly("hub_v2.mp4", "hub.vtt");
    }

    @Test
    void aMarkIsKnownAgainByTheTextOfALessonThatWasNotRecorded() throws ProblemException, IOException {
        EditingProgress.none().edited(LATER, lesson, true, 0).write(folder);
        Files.move(folder.resolve("hub.md"), folder.resolve("axle.md"));
        files.file("axle.md", "# Axle\n\nHere is the hub.\nHere is the rim.\nA line that is new.\n");
        files.lesson("rim", "Quite another lesson.\nHere is the rim.\nIt turns.\n");
        course = files.read();
        lesson = course.lessons().get(0);
        assertThat(board().lessons())
                .extracting(state -> state.edited().isPresent())
                .containsExactly(true, false);

        files.lesson("hub", "A new lesson takes the old name.\n");
        course = files.read();
        assertThat(board().lessons())
                .as("the mark stays with the name while there is one")
                .extracting(state -> state.lesson().name() + state.edited().isPresent())
                .containsExactly("axlefalse", "hubtrue", "rimfalse");
    }

    @Test
    void marksOfEarlierVersionsAreRead() throws ProblemException {
        files.file(
                "progress.json",
                "[{\"when\": \"2027-03-02T10:00:00Z\", \"lesson\": \"hub\", \"kind\": \"EDITED\", \"hours\": 2.5}]");
        assertThat(state(session(FIRST, "ccc")).editHours()).hasValue(2.5);
    }

    @Test
    void whatCantBeReadIsARowWithItsReason() throws ProblemException {
        files.file("axle.md", "# Axle\n\n> Smile.\n");
        files.file("zoom.docx", "no document");
        course = CourseReader.readable(folder);
        lesson = course.lessons().get(0);
        assertThat(String.join("\n", BoardText.of(board())))
                .containsPattern("1 axle.md +to be written +axle.md has no words to\n +read yet")
                .containsPattern("2 hub +12 +0:\\d+ +script")
                .containsPattern("3 zoom.docx +can't be read +zoom.docx: this is not a\n")
                .contains("3 lessons of 3 need something", "  axle: a script that can be read");
    }

    @Test
    void anExportOlderThanTheLastRecordingDoesNotCount() throws ProblemException {
        files.export("hub.mp4", FIRST);
        LessonState state = state(session(FIRST.minusSeconds(3600), "mcc"), session(LATER, "c"));
        assertThat(state.stage()).isEqualTo(LessonStage.RECORDED);
        assertThat(state.next()).isEqualTo("edit it again: it was recorded since");
    }

    @Test
    void theCourseIsFinishedWhenEveryCurrentExportWasChecked() throws ProblemException, IOException {
        Path export = files.export("hub.mp4", LATER);
        ExportChecks.keep(folder, export, LATER, List.of("black from 3 s to 5 s", "too loud"));
        LessonState found = state(session(FIRST, "ccc"));
        assertThat(found.next()).isEqualTo("mend hub.mp4: black from 3 s to 5 s");
        assertThat(found.missing()).containsExactly("2 findings of its check");
        assertThat(board(session(FIRST, "ccc")).finished()).isFalse();

        ExportChecks.keep(folder, export, LATER, List.of());
        Board due = board(session(FIRST, "ccc"));
        assertThat(due.lessons().get(0).stage()).isEqualTo(LessonStage.CHECKED);
        assertThat(due.finished()).as("a fact is due").isFalse();
        assertThat(BoardText.of(due)).contains("  a look at \"$12\" in hub, line 3: due since 2027-03-01");

        lookAtTheFact(LATER, true);
        Board board = board(session(FIRST, "ccc"));
        assertThat(board.finished()).isTrue();
        assertThat(BoardText.of(board)).contains("Looked at on 2027-03-02 and still right: \"$12\" in hub, line 3");
        assertThat(BoardText.of(board))
                .containsSequence(
                        "Finished: every lesson can go out. Every lesson is recorded, has no pickups",
                        "left, and is edited, exported and checked. No fact in it waits for a look.");

        Files.setLastModifiedTime(export, FileTime.from(LATER.plusSeconds(60)));
        assertThat(board(session(FIRST, "ccc")).finished()).isFalse();
    }

    @Test
    void noLaunchDateIsGivenBeforeTheCourseIsFinished() throws ProblemException {
        files.file(Course.FILE, "launch: 2027-06-01\n");
        course = files.read();
        lesson = course.lessons().get(0);
        assertThat(BoardText.of(board(session(FIRST, "ccc"))))
                .noneMatch(row -> row.contains("2027-06-01"))
                .contains("Don't promise a date until nothing is missing. Missing are:", "  hub: edit, export, check");
    }

    private void lookAtTheFact(Instant when, boolean right) throws ProblemException {
        FactChecks.read(folder)
                .decided(when, lesson, lesson.script().facts().get(0), right)
                .write(folder);
    }

    @Test
    void aLookAtAFactHoldsUntilItIsTakenBackOrTheFactIsAnother() throws ProblemException {
        lookAtTheFact(FIRST, true);
        assertThat(board().due()).isEmpty();
        lookAtTheFact(LATER, false);
        assertThat(board().due()).hasSize(1);
        lookAtTheFact(LATER, true);

        for (String other : List.of(
                TEXT.replace("$12", "$14"),
                TEXT.replace("It costs", "Now it costs"),
                TEXT.replace("2027-03", "2027-02"))) {
            files.lesson("hub", other);
            course = files.read();
            assertThat(board().due()).as(other).hasSize(1);
        }
        files.lesson("hub", "A line before.\n" + TEXT);
        course = files.read();
        assertThat(board().due()).isEmpty();
    }

    @Test
    void dueFactsAreListedWithTheirLinesAndExports() throws ProblemException {
        files.export("hub.mp4", LATER);
        files.file("exports/hub.vtt", "WEBVTT\n\n00:01.000 --> 00:03.000\nIt costs\n$12.\n");
        files.file("exports/hub.srt", "1\n00:00:01,000 --> 00:00:03,000\nHere is the hub.\n");
        Board board = board(session(FIRST, "ccc"));
        assertThat(BoardText.of(board))
                .containsSequence(
                        "To check, due 2027-03-01: \"$12\" in hub, line 3",
                        "  It costs $12.",
                        "  Said in hub.mp4, hub.vtt.");
        assertThat(BoardJson.of(board).at("/due/0/exports/0").asText()).isEqualTo("hub.mp4");
        assertThat(BoardJson.of(board).at("/due/0/captions/0").asText()).isEqualTo("hub.vtt");
        assertThat(new Board(course, board.measured(), board.lessons(), board.facts(), LocalDate.of(2027, 2, 28)).due())
                .isEmpty();
    }

    @Test
    void paceAndRatioAreMeasuredOverTheSessions() throws ProblemException {
        files.lesson("hub", "one two three four five six seven eight nine ten.\n".repeat(24));
        course = files.read();
        lesson = course.lessons().get(0);
        Board board = board(session(FIRST, "c".repeat(24)), session(LATER, "c".repeat(24)));
        assertThat(board.measured().pace().orElseThrow()).isBetween(59.0, 62.0);
        assertThat(board.measured().ratio().orElseThrow()).isBetween(1.0, 1.1);
    }

    private LessonState state(RecordedSession... sessions) throws ProblemException {
        return board(sessions).lessons().get(0);
    }

    private Board board(RecordedSession... sessions) throws ProblemException {
        return BoardReader.read(course, Map.of(lesson, List.of(sessions)), TODAY);
    }

    private RecordedSession session(Instant when, String outcomes) {
        return Sessions.of(lesson.script(), when, outcomes);
    }
}
