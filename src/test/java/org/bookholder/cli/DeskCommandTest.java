package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.s;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.course.CourseFolder;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.StoredExamples;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code bookholder desk} opens; each is ended by Enter at once. */
final class DeskCommandTest {
    @TempDir
    private Path folder;

    private Program program;

    @BeforeEach
    void type() {
        program = new Program(folder);
        program.types("\n");
    }

    @Test
    void opensASession() throws IOException, ProblemException {
        StoredExamples.write(folder.resolve("session"), "lesson.md");
        assertThat(program.run("desk", program.path("session"))).isZero();
        assertThat(program.out()).contains("Session: " + program.path("session"), "Desk: http://127.0.0.1:");
    }

    @Test
    void opensACourseAndKeepsItsKeysElsewhere() throws IOException, ProblemException {
        CourseFolder course = new CourseFolder(folder.resolve("wheels"));
        course.lesson("hub", "Every wheel begins with its hub.");
        assertThat(program.run("desk", course.path().toString())).isZero();
        assertThat(program.out()).contains("Course: " + course.path(), "Desk: http://127.0.0.1:");
        assertThat(course.path()).isDirectoryNotContaining("glob:**desk.json");
        assertThat(folder.resolve("data/desks")).isDirectoryRecursivelyContaining("glob:**desk.json");
    }

    @Test
    void opensAFolderOfSessions() throws IOException, ProblemException {
        StoredExamples.write(folder.resolve("kept/monday"), "lesson.md");
        assertThat(program.run("desk", program.path("kept"))).isZero();
        assertThat(program.out()).contains("Sessions: " + program.path("kept"));
    }

    @Test
    void listensToTakesOfACourseThatAKillBrokeOffOnceBeforeItOpens() throws IOException, ProblemException {
        CourseFolder course = new CourseFolder(folder.resolve("wheels"));
        course.lesson("hub", "Every wheel begins with its hub.");
        Path hub = course.path().resolve("sessions/hub");
        Path other = folder.resolve("data/sessions/other");
        brokenOff(hub, course.path().resolve("hub.md").toString(), "Every wheel begins with its hub.\n");
        brokenOff(other, "rim.md", "Nothing of this is in that course.\n");

        assertThat(program.run("desk", course.path().toString())).isZero();
        assertThat(program.err().lines())
                .containsExactly(
                        "bookholder: " + hub + ": take 1 was broken off; listening again to what was recorded");
        assertThat(program.out()).contains("Desk: http://127.0.0.1:");
        program.types("\n");
        assertThat(program.run("desk", course.path().toString())).isZero();
        assertThat(program.err()).isEmpty();

        // The other course's take is only listened to when somebody opens that course.
        program.types("\n");
        assertThat(program.run("desk", program.path("data/sessions"))).isZero();
        assertThat(program.err()).contains(other + ": take 1 was broken off; listening again");
    }

    private static void brokenOff(Path session, String source, String text) throws ProblemException {
        try (SessionFolder kept = SessionFolder.create(session, new SessionLocks())) {
            kept.journal().append(new SessionEvent.Opened(s(0), MORNING, "hub", source, text));
            kept.journal()
                    .append(new SessionEvent.TakeStarted(s(0), 1, MORNING, "a microphone", ReadingPosition.START));
        }
        Wav.write(session.resolve("take-001.wav"), Program.RATE, Wav.sine(200, 0.01, Program.RATE, 1));
    }

    @Test
    void impossibleRequestsGetOneLine() throws IOException, ProblemException {
        Files.createDirectory(folder.resolve("empty"));
        CourseFolder course = new CourseFolder(folder.resolve("wheels"));
        course.lesson("hub", "Every wheel begins with its hub.");
        course.file("course.yaml", "lessons: [none.md]\n");
        assertThat(program.run("desk", program.path("empty"))).isEqualTo(2);
        assertThat(program.err()).hasLineCount(1).contains("neither a session nor a script lies there");
        assertThat(program.run("desk", course.path().toString())).isEqualTo(2);
        assertThat(program.err()).hasLineCount(1).contains("course.yaml:1", "there is no file 'none.md'");
    }
}
