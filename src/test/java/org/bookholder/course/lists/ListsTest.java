package org.bookholder.course.lists;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.bookholder.course.Course;
import org.bookholder.course.CourseFolder;
import org.bookholder.course.ExportChecks;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.Sessions;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.BoardReader;
import org.bookholder.course.lists.CourseList.Row;
import org.bookholder.course.lists.ListItem.Finding;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The lists of a course: what is found for them, and what people write into them. */
final class ListsTest {
    private static final Instant NOW = Instant.parse("2027-03-09T08:00:00Z");
    private static final LocalDate TODAY = LocalDate.of(2027, 3, 9);

    @TempDir
    private Path folder;

    private CourseFolder files;

    @BeforeEach
    void writeCourse() {
        files = new CourseFolder(folder);
        files.lesson("1-hub", "Here is the hub.\n\n> Hold up the hub.\n\n![the rim](rim%20big.jpg)\nHere is the rim.");
        files.lesson("2-rim", "> Hold up the hub.\n\nHere it is again.\n\n> Lay all of it aside.");
    }

    @Test
    void directionsAreToBeShownBeforeTheirLinesAndCoversAreLookedFor() throws ProblemException {
        assertThat(shots())
                .extracting(ListItem::heading, ListItem::part, ListItem::text, ListItem::detail, ListItem::found)
                .containsExactly(
                        tuple(
                                "1 \u00b7 1-hub",
                                ShotList.TO_SHOW,
                                "Hold up the hub.",
                                "before line 2, \u201cHere is the rim.\u201d; to be recorded",
                                Finding.UNKNOWN),
                        tuple(
                                "1 \u00b7 1-hub",
                                ShotList.COVERS,
                                "the rim",
                                "rim%20big.jpg is missing: put it beside the script; over line 2",
                                Finding.MISSING),
                        tuple(
                                "2 \u00b7 2-rim",
                                ShotList.TO_SHOW,
                                "Hold up the hub.",
                                "before line 1, \u201cHere it is again.\u201d; to be recorded",
                                Finding.UNKNOWN),
                        tuple(
                                "2 \u00b7 2-rim",
                                ShotList.TO_SHOW,
                                "Lay all of it aside.",
                                "after the last line",
                                Finding.UNKNOWN));
        files.file("rim big.jpg", "a picture");
        assertThat(shots().get(1).found()).isEqualTo(Finding.THERE);
    }

    @Test
    void cuesForTheVoiceHeadingsAndSpeakersAreNothingToShow() throws ProblemException {
        files.lesson(
                "1-hub",
                "(beat)\n\nOne more line.\n\n## A part of it\n\n[smiles]\n\nAnother line.\n\n> Ada\n\nThe end.");
        List<ListItem> shots = ShotList.of(board(), lesson -> Set.of("ada"));
        assertThat(shots).extracting(ListItem::number).containsExactly(2, 2);
    }

    @Test
    void aLessonWithSlidesAndNoPictureMissesThem() throws ProblemException {
        files.file("course.yaml", "lessons: [1-hub.md, {script: 2-rim.md, kind: slides}]\n");
        assertThat(shots().get(4))
                .extracting(ListItem::heading, ListItem::text, ListItem::found)
                .containsExactly("2 \u00b7 2-rim", "Pictures or clips for this lesson", Finding.MISSING);
    }

    @Test
    void ticksRemarksAndItemsOfOnesOwnOutliveARenamedLesson() throws ProblemException {
        ListMarks marks = ListMarks.read(folder)
                .ticked(ListKind.SHOTS, shots().get(0).id(), true, NOW)
                .remarked(ListKind.SHOTS, shots().get(0).id(), "  from\nthe left ", NOW)
                .leftOut(ListKind.SHOTS, shots().get(3).id(), true, NOW)
                .added(ListKind.SHOTS, "1-hub", "Close-up of the axle", NOW)
                .added(ListKind.SHOTS, "", "The whole bench", NOW);
        marks.write(folder);
        assertThat(folder.resolve("1-hub.md")
                        .toFile()
                        .renameTo(folder.resolve("0-begin.md").toFile()))
                .isTrue();

        CourseList list = CourseList.of(
                ListKind.SHOTS, shots(), files.read().lessons(), ListMarks.read(folder), TODAY, ZoneOffset.UTC);
        assertThat(list.rows())
                .extracting(row -> row.item().text(), Row::own, Row::done, Row::out, Row::remark)
                .containsExactly(
                        tuple("Hold up the hub.", false, true, false, "from the left"),
                        tuple("the rim", false, false, false, ""),
                        tuple("Close-up of the axle", true, false, false, ""),
                        tuple("Hold up the hub.", false, false, false, ""),
                        tuple("Lay all of it aside.", false, false, true, ""),
                        tuple("The whole bench", true, false, false, ""));
        assertThat(list.standing()).isEqualTo("1 of 5 done");
        assertThat(ListText.of(list))
                .contains("   1 [x] Hold up the hub.", "          Remark: from the left", "Left out:");
    }

    @Test
    void emptyAndEndlessTextsAreRefused() throws ProblemException {
        ListMarks marks = ListMarks.read(folder);
        assertThatThrownBy(() -> marks.added(ListKind.SHOTS, "", " \n", NOW))
                .hasMessageContaining("nothing is written");
        assertThatThrownBy(() -> marks.remarked(ListKind.SHOTS, "x", "x".repeat(501), NOW))
                .hasMessageContaining("too long for a list");
        files.file("lists.json", "[{");
        assertThatThrownBy(() -> ListMarks.read(folder)).hasMessageContaining("the marks cannot be understood");
    }

    @Test
    void ticksOfTheSetUpHoldForTheirDayAndRemarksStay() throws ProblemException {
        ListMarks marks = ListMarks.read(folder)
                .ticked(ListKind.SET_UP, "Battery", true, NOW)
                .remarked(ListKind.SET_UP, "Battery", "the long cable", NOW);
        assertThat(setUp(marks, TODAY).row("Battery").orElseThrow()).matches(Row::done);
        Row nextDay = setUp(marks, TODAY.plusDays(1)).row("Battery").orElseThrow();
        assertThat(nextDay.done()).isFalse();
        assertThat(nextDay.remark()).isEqualTo("the long cable");
    }

    private CourseList setUp(ListMarks marks, LocalDate day) throws ProblemException {
        List<ListItem> items = SetUpList.of(board(), Optional.empty(), Map.of(), ZoneOffset.UTC);
        return CourseList.of(ListKind.SET_UP, items, files.read().lessons(), marks, day, ZoneOffset.UTC);
    }

    @Test
    void whatBelongsToALaunchIsFoundByItsName() throws Exception {
        assertThat(LaunchList.missing(launch()))
                .containsExactly(
                        "Titles: the course, lessons 1, 2",
                        "Descriptions: the course, lessons 1, 2",
                        "Pictures: the course, lessons 1, 2",
                        "Resources: the course",
                        "Captions: lessons 1, 2",
                        "Films checked: lessons 1, 2");
        files.file("course.yaml", "title: A wheel\n");
        files.file("1-hub.md", "---\ntitle: The hub\n---\nHere is the hub.\n");
        files.file("exports/course.jpg", "a picture");
        files.file("exports/course-description.md", "What it is about.");
        files.file("exports/1-hub-description.txt", "What it is about.");
        files.file("exports/1-hub.png", "a picture");
        files.file("exports/1-hub worksheet.pdf", "a sheet");
        files.export("captions/1-hub.vtt", NOW);
        Path film = files.export("1-hub.mp4", NOW);
        ExportChecks.keep(folder, film, NOW, List.of());
        Lesson hub = files.read().lessons().get(0);
        RecordedSession session = Sessions.of(hub.script(), NOW.minus(Duration.ofDays(1)), "c");
        CourseList list = launch(session);
        assertThat(LaunchList.missing(list))
                .containsExactly(
                        "Titles: lesson 2",
                        "Descriptions: lesson 2",
                        "Pictures: lesson 2",
                        "Captions: lesson 2",
                        "Films checked: lesson 2");
        assertThat(list.row("Resources").orElseThrow().item().detail()).isEqualTo("1-hub worksheet.pdf");
        assertThat(list.row("Films checked: The hub").orElseThrow().done()).isTrue();
    }

    @Test
    void captionsOlderThanTheLastRecordingAreThoseOfAnEarlierFilm() throws Exception {
        files.export("1-hub.srt", NOW.minus(Duration.ofDays(2)));
        Lesson hub = files.read().lessons().get(0);
        CourseList list = launch(Sessions.of(hub.script(), NOW.minus(Duration.ofDays(1)), "cc"));
        Row captions = list.row("Captions: 1-hub").orElseThrow();
        assertThat(captions.done()).isFalse();
        assertThat(captions.item().detail()).isEqualTo("1-hub.srt: older than the last recording");
    }

    @Test
    void aWholePartIsLeftOutAndAFileThatIsNotNeededIsTickedByAPerson() throws ProblemException {
        ListMarks marks = ListMarks.read(folder)
                .partLeftOut(ListKind.LAUNCH, "Descriptions", true, NOW)
                .partLeftOut(ListKind.LAUNCH, "Pictures", true, NOW)
                .partLeftOut(ListKind.LAUNCH, "Pictures", false, NOW)
                .ticked(ListKind.LAUNCH, "Captions: 1-hub", true, NOW)
                .added(ListKind.LAUNCH, "", "Tell the testers", NOW);
        CourseList list = CourseList.of(
                ListKind.LAUNCH, LaunchList.of(board()), files.read().lessons(), marks, TODAY, ZoneOffset.UTC);
        assertThat(LaunchList.missing(list))
                .contains("Captions: lesson 2", "Pictures: the course, lessons 1, 2", "Tell the testers")
                .noneMatch(line -> line.startsWith("Descriptions"));
        assertThat(ListText.of(list)).contains("     all of: Descriptions");
    }

    @Test
    void anOpenLaunchListDoesNotKeepACourseFromBeingFinished() throws Exception {
        Files.delete(folder.resolve("2-rim.md"));
        files.lesson("1-hub", "Here is the hub.");
        Path film = files.export("1-hub.mp4", NOW);
        ExportChecks.keep(folder, film, NOW, List.of());
        Lesson hub = files.read().lessons().get(0);
        Board board = board(Sessions.of(hub.script(), NOW.minus(Duration.ofDays(1)), "c"));
        assertThat(board.finished()).isTrue();
        assertThat(CourseList.of(
                                ListKind.LAUNCH,
                                LaunchList.of(board),
                                files.read().lessons(),
                                ListMarks.read(folder),
                                TODAY,
                                ZoneOffset.UTC)
                        .open())
                .isNotEmpty();
    }

    private CourseList launch(RecordedSession... sessions) throws ProblemException {
        return CourseList.of(
                ListKind.LAUNCH,
                LaunchList.of(board(sessions)),
                files.read().lessons(),
                ListMarks.read(folder),
                TODAY,
                ZoneOffset.UTC);
    }

    private List<ListItem> shots() throws ProblemException {
        return ShotList.of(board(), ListsTest::nobody);
    }

    private Board board(RecordedSession... sessions) throws ProblemException {
        Course course = files.read();
        return BoardReader.read(course, Map.of(course.lessons().get(0), List.of(sessions)), TODAY);
    }

    private static Set<String> nobody(Lesson lesson) {
        return Set.of();
    }
}
