package org.bookholder.app.course;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.app.environment.Environment;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class RunningTimesTest {
    @TempDir
    private Path folder;

    private Path script;
    private Environment here;

    @BeforeEach
    void write() throws IOException {
        script = Files.writeString(folder.resolve("lesson.md"), StoredExamples.script());
        here = StoredExamples.here(folder);
    }

    @Test
    void timesOneLessonWithoutACourse() throws ProblemException {
        RunningTimes times = RunningTimes.of(script, here);
        assertThat(times.course()).isEmpty();
        assertThat(times.lessons()).hasSize(1);
        assertThat(times.wordsChecked()).isTrue();
    }

    @Test
    void reportsAnUnreadableSessionAndContinues() throws ProblemException, IOException {
        Path broken = folder.resolve("sessions/broken");
        StoredExamples.write(broken, script.toString());
        Files.writeString(broken.resolve("journal.db"), "not a journal");
        RunningTimes times = RunningTimes.of(script, here);
        assertThat(times.unreadable()).singleElement().asString().contains("broken");
        assertThat(times.lessons()).hasSize(1);
    }
}
