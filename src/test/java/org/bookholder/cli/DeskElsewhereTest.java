package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.app.course.CourseDesk;
import org.bookholder.app.desk.DeskRequest;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.course.CourseFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Browser;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The page of a course while another process reads one of its lessons. */
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
final class DeskElsewhereTest {
    private static final String READ_NOW = "document.querySelector('#list')?.textContent.includes('being read now')";

    @TempDir
    private Path folder;

    private CourseDesk shelf;
    private RunningDesk desk;
    private ChildJvm reading;
    private Browser browser;

    @BeforeEach
    void open() throws IOException, ProblemException {
        Browser.needed();
        CourseFolder course = new CourseFolder(folder.resolve("wheels"));
        Path lesson = course.lesson("1-hub", "Every wheel begins with its hub.");
        shelf = new CourseDesk(StoredExamples.here(folder), course.path(), true);
        desk = RunningDesk.of(
                StoredExamples.here(folder), new DeskRequest(Optional.empty(), true, List.of()), folder, shelf);
        browser = new Browser();
        browser.size(1440, 900);
        reading = ChildJvm.startWith(
                Map.of("XDG_DATA_HOME", folder.resolve("data").toString()),
                Main.class,
                "read",
                lesson.toString(),
                "--session",
                folder.resolve("wheels/sessions/now").toString(),
                "--no-window",
                "--no-microphone");
        reading.readTo("Desk: ");
    }

    @AfterEach
    void close() {
        if (browser != null) {
            browser.close();
            desk.close();
            shelf.close();
        }
        if (reading != null) {
            reading.close();
        }
    }

    @Test
    void theOwnersPageGoesToTheDeskOfTheProcessThatReads() throws IOException, InterruptedException {
        browser.open(desk.address());
        browser.until(READ_NOW);
        browser.picture("course-read-elsewhere");
        browser.click("#list td.q button");
        browser.until(LiveDesk.ROLLING);
        browser.press("p");
        browser.until("deskState.model.at.open === 1");
        assertThat(browser.value("location.hash")).as("no key in the address").isEqualTo("");
        browser.open(desk.address());
        reading.terminate();
        browser.until("window.courseState && courseState() && !" + READ_NOW);
    }

    @Test
    void aDeviceThatCameInByACodeIsNotSentThere() {
        String code = desk.network().orElseThrow().joinCode();
        browser.open(desk.address().replaceFirst("#.*", ""));
        browser.until("document.querySelector('#code')");
        browser.type("#code", code);
        browser.click("#join button");
        browser.until(READ_NOW);
        browser.click("#list td.q button");
        browser.until("document.querySelector('#link').textContent"
                + " === \"Not opened: only the program's own page opens another desk.\"");
    }
}
