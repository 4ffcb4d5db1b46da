package org.bookholder.app.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.app.session.CourseHabits.Saying;
import org.bookholder.journal.SaidNotes;
import org.bookholder.journal.SaidNotes.Said;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is remembered of how the author of a course says things. */
final class CourseHabitsTest {
    @TempDir
    private Path folder;

    private Path script;
    private CourseHabits habits;

    @BeforeEach
    void course() throws IOException {
        Path course = Files.createDirectories(folder.resolve("cakes"));
        script = Files.writeString(course.resolve("lesson-1.md"), "Bake it at 350 degrees with 2 kg of flour.\n");
        habits = new CourseHabits(StoredExamples.here(folder.resolve("data")));
    }

    private void session(Path place, Path course, Said... said) throws ProblemException {
        SessionFolder.create(place, new SessionLocks()).close();
        new SaidNotes(course.toString(), List.of(said)).keep(place);
    }

    private static Said kilos(int line) {
        return new Said("2 kg", "two kilograms", "two kilos", line, 1, 2.5, 3.25);
    }

    @Test
    void sessionsOfTheCourseCountAndThoseOfOthersDoNot() throws ProblemException {
        Path sessions = folder.resolve("data/sessions");
        session(sessions.resolve("one"), CourseHabits.courseOf(script), kilos(1));
        session(sessions.resolve("other"), folder.resolve("sails"), kilos(1));
        assertThat(habits.known(script).sayings()).singleElement().satisfies(saying -> {
            assertThat(saying.times()).isEqualTo(1);
            assertThat(saying.last().orElseThrow().session().endsWith("one")).isTrue();
        });
        session(folder.resolve("cakes/sessions/two"), Path.of("/elsewhere/cakes"), kilos(1));
        assertThat(habits.of(script).heard()).singleElement().satisfies(habit -> {
            assertThat(habit.said()).isEqualTo("two kilos");
            assertThat(habit.times()).isEqualTo(2);
        });
    }

    @Test
    void whatIsChosenStandsInTheCoursesFileAndCanBeTakenBack() throws ProblemException, IOException {
        Path file = Files.writeString(folder.resolve("cakes/course.yaml"), "title: Cakes # for now\n");
        habits.choose(script, "350", "Three fifty");
        habits.choose(script, "10:05", "ten oh five");
        assertThat(file)
                .content()
                .isEqualTo("title: Cakes # for now\nsay:\n  350: three fifty\n  10:05: ten oh five\n");
        assertThat(habits.known(script).sayings())
                .extracting(Saying::written, Saying::said, Saying::chosen)
                .containsExactly(tuple("350", "three fifty", true), tuple("10:05", "ten oh five", true));
        habits.choose(script, "350", "");
        habits.choose(script, "10:05", " ");
        assertThat(file).content().isEqualTo("title: Cakes # for now\n");
    }

    @Test
    void whatCannotBeSaidIsRefusedAndNothingIsWritten() {
        assertThatThrownBy(() -> habits.choose(script, "350", "3-5-0"))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("this can't be said");
        assertThat(folder.resolve("cakes/course.yaml")).doesNotExist();
    }

    @Test
    void aFileWithAMistakeCostsTheHabitsOnly() throws IOException {
        Files.writeString(folder.resolve("cakes/course.yaml"), "say:\n  350: 12\n");
        assertThat(habits.known(script)).isEqualTo(CourseHabits.Known.NOTHING);
    }

    @Test
    void damagedNotesOfASessionAreNoHabits() throws ProblemException, IOException {
        Path session = folder.resolve("cakes/sessions/one");
        session(session, CourseHabits.courseOf(script), kilos(1));
        Files.writeString(session.resolve("said.json"), "{\"course\": 3");
        assertThat(habits.known(script).sayings()).isEmpty();
    }
}
