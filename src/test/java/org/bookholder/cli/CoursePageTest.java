package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.bookholder.app.course.CourseDesk;
import org.bookholder.app.desk.DeskRequest;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.CourseFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Browser;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.openqa.selenium.Keys;

/** The desk of a course with two sessions of one lesson and none of another, in a real browser. */
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class CoursePageTest {
    @TempDir
    private Path folder;

    private CourseFolder files;
    private CourseDesk shelf;
    private RunningDesk desk;
    private Browser browser;

    @BeforeEach
    void open() throws ProblemException {
        Browser.needed();
        files = new CourseFolder(folder.resolve("wheels"));
        String script = files.file("1-lesson.md", StoredExamples.script()).toString();
        files.lesson("2-hub", "Every wheel begins with its hub.");
        StoredExamples.write(folder.resolve("wheels/sessions/monday"), script);
        StoredExamples.write(folder.resolve("wheels/sessions/tuesday"), script);
        Environment here = StoredExamples.here(folder);
        shelf = new CourseDesk(here, files.path(), true);
        desk = RunningDesk.of(here, DeskRequest.usual(), folder, shelf);
        browser = new Browser();
        browser.size(1440, 900);
        browser.open(desk.address());
        browser.until("window.courseState && courseState()");
    }

    @AfterEach
    void close() {
        if (browser != null) {
            browser.close();
            desk.close();
            shelf.close();
        }
    }

    @Test
    void allSessionsAndTheirPickupsAreListedAndEachOpens() throws IOException {
        assertThat(browser.text("#list")).contains("1 · A lesson", "1 take", "00:18", "4 of 6 lines", "4 to pick up");
        assertThat(rows("#list td.name")).isEqualTo(2);
        browser.lookAtEverySize("course-sessions");
        browser.press("2");
        assertThat(rows("#items .item")).as("each line once").isEqualTo(4);
        browser.choose("#f-reason", "skipped");
        assertThat(rows("#items .item")).isEqualTo(2);
        browser.choose("#f-reason", "open");
        assertThat(browser.text("#f-session")).contains("1 · A lesson, ");
        browser.choose("#f-session", (String) browser.value("courseState().sessions.find(s => s.open === 4).name"));
        assertThat(rows("#items .item")).isEqualTo(4);
        browser.choose("#f-take", "1");
        browser.choose("#f-lesson", "1 · A lesson");
        browser.choose("#f-order", "time");
        assertThat(rows("#items .item")).isEqualTo(4);
        browser.lookAtEverySize("course-pickups");
        browser.choose("#f-order", "sure");
        assertThat(browser.text("#items li:last-child .number"))
                .as("the least sure")
                .isEqualTo("2");
        browser.choose("#f-order", "script");

        browser.click("#items a.item");
        browser.until("window.deskState && deskState.model.known");
        browser.until("document.querySelector('#where').textContent === 'line 2'");
        browser.until("document.querySelector('.wave path').getAttribute('d').length > 100");
        browser.press("e");
        browser.until("deskState.model.lines[1].decision");
        browser.click("#back");
        browser.until("window.courseState && courseState()?.sessions.some(s => s.open === 3)");
        assertThat(rows("#items .item")).as("back on the list").isEqualTo(3);
    }

    /** A line that two sessions have to pick up stands on the sheet once. */
    @Test
    void theListIsPrintedOnASheetForEachLesson() throws IOException, ProblemException {
        String hub = StoredExamples.script("The hub");
        String other = files.file("2-hub.md", hub).toString();
        StoredExamples.write(folder.resolve("wheels/sessions/wednesday"), other, hub);
        browser.until(
                "courseState().sessions.length === 3 && courseState().sessions.filter(s => s.open === 4).length === 2");
        browser.press("2");
        browser.press("?");
        browser.until("document.querySelector('#keys').textContent.includes('print this list')");
        browser.press(Keys.ESCAPE);
        byte[] pdf = browser.pdf("course-sheets");
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages()).isEqualTo(2);
            for (int page = 1; page <= 2; page++) {
                PDFTextStripper sheet = new PDFTextStripper();
                sheet.setStartPage(page);
                sheet.setEndPage(page);
                assertThat(sheet.getText(document))
                        .contains(page == 1 ? "A lesson" : "The hub", "4 lines to pick up")
                        .containsOnlyOnce("Then lace the first side.");
            }
        }
    }

    @Test
    void marksAreSetByOneClickAndUndone() throws IOException {
        browser.press("3");
        browser.until("document.querySelector('#standing table')");
        assertThat(browser.text("#standing")).contains("Finished? Not yet.", "record line 6", "Recording", "Edit");
        browser.lookAtEverySize("course-board");
        browser.click("[data-lesson='2-hub']");
        browser.until("document.querySelector('[data-lesson=\"2-hub\"]').getAttribute('aria-pressed') === 'true'");
        assertThat(board()).contains("2-hub: recording, export, check");
        browser.press("u");
        browser.until("document.querySelector('[data-lesson=\"2-hub\"]').getAttribute('aria-pressed') === 'false'");
        assertThat(board()).contains("2-hub: recording, edit, export, check");
        assertThat(browser.value("document.querySelector('#undo').disabled")).isEqualTo(true);
    }

    @Test
    void anAddressWithAKeyOpensTheViewThatItNames() {
        browser.open("about:blank");
        browser.open(desk.address().replace("#", "?view=board#"));
        browser.until("window.courseState && courseState() && !document.querySelector('#board').hidden");
        assertThat(browser.value("location.search + location.hash")).isEqualTo("?view=board");
        assertThat(browser.value("[...document.fonts].map(font => font.display)"))
                .isEqualTo(List.of("swap", "swap"));
    }

    @Test
    void anActionWithoutATimelyAnswerIsNotReportedAsFailed() {
        browser.press("3");
        browser.until("document.querySelector('[data-lesson=\"2-hub\"]')");
        browser.value("(window.fetch = () => Promise.reject(new DOMException('too late', 'TimeoutError')))");
        browser.click("[data-lesson='2-hub']");
        browser.until("document.querySelector('#link').textContent"
                + " === 'The program does not answer; it may not be done.'");
    }

    /** Changes made elsewhere appear by themselves, and invalid files are reported. */
    @Test
    void thePageShowsChangesInTheFolder() {
        files.lesson("3-rim", "Every wheel ends with its rim.");
        browser.until("courseState().board.lessons.length === 3");
        files.file("course.yaml", "lessons: [none.md]\n");
        browser.until("document.querySelector('#link').textContent.includes(\"there is no file 'none.md'\")");
        files.file("course.yaml", "title: Wheels\n");
        browser.until("document.querySelector('#title').textContent === 'Wheels'");
    }

    private long rows(String selector) {
        return (long) browser.value("document.querySelectorAll(\"" + selector + "\").length");
    }

    /** What the command says of the course. */
    private String board() {
        Program program = new Program(folder);
        assertThat(program.run("course", files.path().toString())).isZero();
        return program.out();
    }
}
