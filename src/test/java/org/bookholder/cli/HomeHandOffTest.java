package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.testing.Browser;
import org.bookholder.testing.FakeEquipment;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** The files for the editor, written from the program's own page in a real browser: of a session, and of a lesson of two. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class HomeHandOffTest {
    private final FakeEquipment equipment = new FakeEquipment();

    @TempDir
    private Path folder;

    @AutoClose
    private PageAtHome page;

    private Browser browser;

    @BeforeEach
    void open() throws Exception {
        Browser.needed();
        Path course = Files.createDirectories(folder.resolve("user/films/wheels"));
        Files.writeString(course.resolve("course.yaml"), "title: A course\n");
        Path lesson = Files.writeString(course.resolve("lesson-1.md"), StoredExamples.script("One wheel"));
        Files.writeString(
                course.resolve("lesson-2.md"), "---\ntitle: Two wheels\n---\nA second lesson of few words.\n");
        StoredExamples.write(
                Files.createDirectories(folder.resolve("data/sessions")).resolve("2026-09-09-0900-one-wheel"),
                lesson.toString(),
                StoredExamples.script("One wheel"));
        page = PageAtHome.start(folder, equipment, Optional.of(course));
        browser = page.show();
        browser.until("homeState.course?.today && homeState.jobs");
    }

    @Test
    void theFilesForTheEditorAreWrittenAndOffered() throws IOException, InterruptedException {
        room("handoff");
        assertThat(browser.text("#w-session")).containsPattern("1 · One wheel, .+, \\d+ of \\d+ lines");
        browser.lookAtEverySize("home-handoff-form");
        done();
        assertThat(browser.text("#work-jobs")).contains("Cut: ", " clips, ", "Files: ");
        browser.lookAtEverySize("home-handoff");
        String file = String.valueOf(browser.value("document.querySelector('#work-jobs .files a').href"));
        assertThat(browser.awaited("fetch('" + file + "').then((answer) => answer.status)"))
                .isEqualTo(200L);
        browser.click("#work-jobs .choices button");
        assertThat(equipment.nextShown()).isEqualTo(session().resolve("handoff"));
        assertThat(equipment.shown()).isEmpty();
        browser.until("document.querySelector('#link').textContent === ''");

        done();
        assertThat(browser.text("#work-jobs")).contains("is there already, and nothing was written");
        browser.click("#w-replace");
        done();
        assertThat(browser.value("homeState.jobs[0].step")).isEqualTo("DONE");
    }

    @Test
    void aLessonOfTwoSessionsIsHandedOffAsOne() throws Exception {
        Path lesson = folder.resolve("user/films/wheels/lesson-1.md");
        StoredExamples.write(
                session().resolveSibling("2026-09-10-0900-one-wheel"),
                lesson.toString(),
                StoredExamples.script("One wheel"));
        browser.until("homeState.shelf?.sessions.length === 2");
        room("handoff");
        assertThat(browser.text("#w-session")).contains("1 · One wheel, both sessions as one");
        assertThat(browser.value("document.querySelector('#w-session').value")).isEqualTo(lesson.toString());
        assertThat(browser.text("#w-session-why")).contains("each line comes from the one in which it is clean");
        done();
        assertThat(browser.text("#work-jobs"))
                .contains("Cut: ", "of the session 2026-09-10-0900-one-wheel", "Files: ")
                .doesNotContain("one of them alone");
        browser.lookAtEverySize("home-handoff-lesson");
        assertThat(session().resolveSibling("2026-09-10-0900-one-wheel-handoff"))
                .isDirectoryContaining("glob:**/one-wheel.edl")
                .isDirectoryContaining("glob:**/one-wheel-sessions.txt");
        assertThat(browser.errors()).isEmpty();
    }

    private void room(String kind) {
        if (List.of("time", "pack", "unpack", "repair").contains(kind)) {
            browser.click("#works a[href='?view=tools']");
            browser.click("#tool-" + kind);
        } else {
            browser.click("#works a[href='?view=" + kind + "']");
        }
        browser.until("document.querySelector('#work:not([hidden]) #work-begin')");
    }

    /** Begins the work of the room and waits until it has ended. */
    private void done() {
        Object before = browser.value("Math.max(0, ...homeState.jobs.map((job) => job.id))");
        browser.click("#work-begin");
        browser.until("homeState.jobs[0]?.id > " + before
                + " && !['WAITING', 'RUNNING', 'STOPPING'].includes(homeState.jobs[0].step)");
    }

    private Path session() {
        return folder.resolve("data/sessions/2026-09-09-0900-one-wheel");
    }
}
