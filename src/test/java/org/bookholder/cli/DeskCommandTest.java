package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.bookholder.course.CourseFolder;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.handoff.ExampleSession;
import org.bookholder.journal.ReadRightNotes;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Decision;
import org.bookholder.session.Remark;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;
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
        KeptSessions.write(folder.resolve("session"), "lesson.md");
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
        KeptSessions.write(folder.resolve("kept/monday"), "lesson.md");
        assertThat(program.run("desk", program.path("kept"))).isZero();
        assertThat(program.out()).contains("Sessions: " + program.path("kept"));
    }

    @Test
    void whatCannotBeOpenedIsOneLine() throws IOException, ProblemException {
        Files.createDirectory(folder.resolve("empty"));
        CourseFolder course = new CourseFolder(folder.resolve("wheels"));
        course.lesson("hub", "Every wheel begins with its hub.");
        course.file("course.yaml", "lessons: [none.md]\n");
        assertThat(program.run("desk", program.path("empty"))).isEqualTo(2);
        assertThat(program.err()).hasLineCount(1).contains("neither a session nor a script lies there");
        assertThat(program.run("desk", course.path().toString())).isEqualTo(2);
        assertThat(program.err()).hasLineCount(1).contains("course.yaml:1", "there is no file 'none.md'");
    }

    /** So that a kill of the program does not make the recogniser's faults be called again in the course. */
    @Test
    void whatAReviewTeachesIsKeptWhenItIsDecided() {
        AtomicReference<SessionState> state = new AtomicReference<>(ExampleSession.state());
        Learning learning = new Learning(folder, "/course", state::get);
        learning.doWork();
        assertThat(ReadRightNotes.of(folder))
                .hasValueSatisfying(n -> assertThat(n.readRight()).isEmpty());
        state.set(Session.apply(
                Session.begin(ExampleSession.state().script(), FatigueLimits.defaults()), withDecision()));
        learning.doWork();
        assertThat(ReadRightNotes.of(folder))
                .hasValueSatisfying(
                        n -> assertThat(n.readRight()).extracting("written").contains("spokes"));
    }

    private static List<SessionEvent> withDecision() {
        List<SessionEvent> events = new ArrayList<>(ExampleSession.events());
        events.add(new SessionEvent.Remarked(
                StreamTime.ofSeconds(18), new Remark.Decided(2, Decision.Choice.NOT_A_FAULT, 1, 2)));
        return events;
    }
}
