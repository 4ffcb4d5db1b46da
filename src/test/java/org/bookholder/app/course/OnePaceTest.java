package org.bookholder.app.course;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.TargetPaces;
import org.bookholder.course.board.BoardText;
import org.bookholder.course.prepare.LessonTime;
import org.bookholder.course.prepare.TimeText;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.testing.StoredExamples;
import org.bookholder.wording.PaceText;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The window, the running times and the plan follow one target pace, and say whose it is. */
final class OnePaceTest {
    @TempDir
    private Path folder;

    private Environment here;
    private TargetPaces ada;

    @BeforeEach
    void presenter() throws ProblemException {
        here = StoredExamples.here(folder.resolve("data"));
        ada = new TargetPaces(here, "Ada");
    }

    @ParameterizedTest
    @CsvSource({
        "90, 160, 127, 90 words a minute (the script's)",
        "'', 160, 127, 160 words a minute (the course's)",
        "'', '', 127, 127 words a minute (your own)",
        "'', '', '', 100 words a minute (common practice)",
    })
    void allFollowTheSameTarget(String script, String course, String own, String target)
            throws IOException, ProblemException {
        Path lesson = Files.writeString(
                folder.resolve("lesson.md"),
                (script.isEmpty() ? "" : "---\npace: " + script + "\n---\n") + "A short lesson about ropes.\n");
        Files.writeString(
                folder.resolve("course.yaml"), course.isEmpty() ? "title: Ropes\n" : "pace: " + course + "\n");
        ada.keep(own);

        var window = ada.aimed(ScriptReader.read(lesson), lesson).settings();
        assertThat(PaceText.target(window.targetPace(), window.paceSource())).isEqualTo(target);

        for (Path place : List.of(lesson, folder)) {
            RunningTimes times = RunningTimes.of(place, List.of(), ada, here);
            LessonTime time = times.lessons().get(0);
            assertThat(PaceText.target(time.targetPace(), time.paceSource())).isEqualTo(target);
            assertThat(said(TimeText.of(times.course(), times.lessons(), times.measured(), true)))
                    .contains("Target: " + target + ".")
                    .contains(PaceText.ORDINARY);
        }

        CourseStatus status = CourseStatus.read(folder, ada, here);
        assertThat(said(BoardText.of(status.board())))
                .contains("Target: " + target + ".")
                .contains(PaceText.ORDINARY);
        assertThat(PlanJson.of(new CoursePlan(status, here.zone()), Optional.empty(), Optional.empty())
                        .path("paces")
                        .asText())
                .contains("Target: " + target + ".");
    }

    /** Lines of a terminal as one text. */
    private static String said(List<String> lines) {
        return String.join(" ", lines);
    }
}
