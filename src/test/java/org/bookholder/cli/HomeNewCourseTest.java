package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.bookholder.testing.Browser;
import org.bookholder.testing.FakeEquipment;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** The room in which a course is made from documents and texts, on a machine on which the program was never started. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
final class HomeNewCourseTest {
    @TempDir
    private Path folder;

    @AutoClose
    private PageAtHome page;

    private Browser browser;

    @BeforeEach
    void open() throws Exception {
        Browser.needed();
        page = PageAtHome.start(folder, new FakeEquipment(), Optional.empty());
        browser = page.show();
    }

    @Test
    void aCourseIsMadeFromDocumentsAndPastedText() throws IOException {
        browser.click("#new-first");
        browser.type("#new-title", "Wheels: the \"true\" story");
        assertThat(browser.value("document.querySelector('#new-name').value")).isEqualTo("wheels-the-true-story");

        browser.upload("#files", plain(), table(), Files.write(folder.resolve("film.mp4"), new byte[] {0, 1, 2}));
        browser.until("document.querySelectorAll('.new-lesson').length === 3");
        assertThat(browser.text("#new-lessons"))
                .contains("Lesson 1.md · 4 words · 0:02", "Lesson 2.md", "film.mp4: this kind of file can't be read");
        browser.click("#new-3");
        browser.until("document.querySelector('#t1-1')");
        assertThat(browser.text("#new-look")).contains("It can’t be read yet", "only headings and directions");
        browser.lookAtEverySize("new-course");
        browser.click("#t1-1");
        browser.until("document.querySelector('#new-look').textContent.includes('Turn it slowly now.')");
        browser.until("document.querySelector('#new-look').textContent.includes('Left out: the headings of a table')");
        browser.lookAtEverySize("new-course-columns");

        browser.click("#paste");
        browser.type("#paste-text", "Now we ride home.\n\n> Wave.");
        browser.click("#pasting button[type=submit]");
        browser.until("document.querySelectorAll('.new-lesson').length === 4");
        browser.click("#make");
        browser.until("homeState.course.today && !document.querySelector('#today').hidden");
        Path course = folder.resolve("user/wheels-the-true-story");
        assertThat(course.resolve("course.yaml")).content().isEqualTo("title: \"Wheels: the \\\"true\\\" story\"\n");
        assertThat(course.resolve("Lesson 2.md")).content().contains("> Close up\n\nTurn it slowly now.\n");
        assertThat(course.resolve("lesson-4.md")).content().isEqualTo("Now we ride home.\n\n> Wave.");
        assertThat(browser.text("#title")).isEqualTo("Wheels: the \"true\" story");
        assertThat(browser.text("#order")).contains("Lesson 1", "Lesson 2", "lesson-4");
        assertThat(browser.errors()).allMatch(error -> error.contains("film.mp4"));
    }

    @Test
    void mistakesAreExplainedAndNothingIsLost() throws IOException {
        Files.createDirectories(folder.resolve("user/taken"));
        browser.press("n");
        browser.until("document.activeElement.id === 'new-title'");
        browser.press("Taken");
        browser.click("#paste");
        browser.type("#paste-text", "One line.");
        browser.press(Keys.chord(Keys.TAB));
        browser.press(Keys.ENTER);
        browser.until("document.querySelectorAll('.new-lesson').length === 1");
        browser.click("#make");
        browser.until(
                "document.querySelector('#new-wrong').textContent.includes('a folder of this name is there already')");
        assertThat(folder.resolve("user/taken")).isEmptyDirectory();
        browser.type("#new-name", "free");
        browser.click("#make");
        browser.until("homeState.course.today");
        assertThat(folder.resolve("user/free/lesson-1.md")).content().isEqualTo("One line.");
    }

    private Path plain() throws IOException {
        Path file = folder.resolve("Lesson 1.docx");
        try (XWPFDocument document = new XWPFDocument();
                OutputStream out = Files.newOutputStream(file)) {
            document.createParagraph().createRun().setText("Find the bent spoke.");
            document.write(out);
        }
        return file;
    }

    private Path table() throws IOException {
        Path file = folder.resolve("Lesson 2.docx");
        try (XWPFDocument document = new XWPFDocument();
                OutputStream out = Files.newOutputStream(file)) {
            XWPFTable table = document.createTable(2, 2);
            table.getRow(0).getCell(0).setText("Shot");
            table.getRow(0).getCell(1).setText("Talk");
            table.getRow(1).getCell(0).setText("Close up");
            table.getRow(1).getCell(1).setText("Turn it slowly now.");
            document.write(out);
        }
        return file;
    }
}
