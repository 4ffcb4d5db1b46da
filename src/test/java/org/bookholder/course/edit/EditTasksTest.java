package org.bookholder.course.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.course.Course;
import org.bookholder.course.CourseFolder;
import org.bookholder.course.EditingProgress;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.Sessions;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.BoardReader;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How long what is left of the edit will take, by what is known of the course. */
final class EditTasksTest {
    private static final Instant READ = Instant.parse("2027-03-01T10:00:00Z");
    private static final LocalDate TODAY = LocalDate.of(2027, 3, 9);

    @TempDir
    private Path folder;

    private CourseFolder files;
    private final Map<Lesson, List<RecordedSession>> sessions = new HashMap<>();

    @BeforeEach
    void threeLessons() {
        files = new CourseFolder(folder);
        for (String name : List.of("hub", "rim", "tyre")) {
            files.lesson(name, "Here is the " + name + ".");
        }
    }

    @Test
    void ownHoursCountMoreWithEachLesson() throws ProblemException {
        edited("hub", 3);
        // One lesson as published and one that took three hours: twice the hours.
        assertThat(left()).containsExactly(0.0, 2.0, 2.0);
        edited("rim", 3);
        assertThat(left().get(2)).isCloseTo(7 / 3.0, within(1e-9));
    }

    @Test
    void hoursOfAnotherKindSayNothing() throws ProblemException {
        files.file(Course.FILE, "lessons: [hub.md, {script: rim.md, kind: slides}, tyre.md]");
        edited("hub", 3);
        assertThat(left()).containsExactly(0.0, 5.0, 2.0);
    }

    @Test
    void aDraftOfTheProgramIsOnlyToBeLookedThrough() throws ProblemException, IOException {
        Lesson hub = files.read().lessons().get(0);
        Path session = folder.resolve("sessions/one");
        RecordedSession read = Sessions.of(hub.script(), READ, "c");
        sessions.put(hub, List.of(new RecordedSession(session, read.state())));
        assertThat(left().get(0)).isEqualTo(1);

        Path draft =
                Files.createDirectories(session.resolve("film/draft-of-lesson")).resolve("hub-draft.mp4");
        Files.writeString(draft, "film");
        Files.setLastModifiedTime(draft, FileTime.from(READ.plusSeconds(3600)));
        EditTask task = tasks().get(0);
        // Two minutes of work for each minute (trade practice).
        assertThat(task.left()).isCloseTo(task.minutes() * 2 / 60, within(1e-9)).isPositive();
        assertThat(board().lessons().get(0).next()).isEqualTo("look through its draft and make the film");

        Files.setLastModifiedTime(draft, FileTime.from(READ.minusSeconds(60)));
        assertThat(left().get(0)).as("made before the last recording").isEqualTo(1);
    }

    @Test
    void aLessonWithoutARecordingDayWaitsIfOthersHaveOne() throws ProblemException {
        assertThat(tasks()).noneMatch(EditTask::waits);
        files.file(Course.FILE, "recording: {days: [2027-03-20]}");
        Board board =
                board().planned(number -> number == 2 ? Optional.of(LocalDate.of(2027, 3, 20)) : Optional.empty());
        assertThat(EditTasks.of(board, ZoneOffset.UTC))
                .extracting(EditTask::waits)
                .containsExactly(true, false, true);
    }

    private void edited(String lesson, double hours) throws ProblemException {
        EditingProgress.read(folder)
                .edited(READ.plusSeconds(60), files.read().lesson(lesson).orElseThrow(), true, hours)
                .write(folder);
    }

    private List<Double> left() throws ProblemException {
        return tasks().stream().map(EditTask::left).toList();
    }

    private List<EditTask> tasks() throws ProblemException {
        return EditTasks.of(board(), ZoneOffset.UTC);
    }

    private Board board() throws ProblemException {
        return BoardReader.read(files.read(), sessions, TODAY);
    }
}
