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
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.openqa.selenium.Keys;

/** The room in which a course is made from documents and texts, on a machine on which the program was never started. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
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
        browser.until("document.querySelector('#t1-1')?.checked");
        assertThat(browser.text("#new-look")).contains("Turn it slowly now.");
        browser.click("#t1-1");
        browser.until("document.querySelector('#new-look').textContent.includes('It can’t be read yet')");
        assertThat(browser.text("#new-look")).contains("only headings and directions");
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
    void aCourseWaitsForDocumentsThatAreStillBeingRead() throws IOException {
        browser.click("#new-first");
        browser.type("#new-title", "Wheels");
        browser.value(
                "(() => { const real = fetch; const held = new Promise((go) => { window.letGo = go; }); let first = true;"
                        + " window.fetch = (path, options) => { if (!String(path).startsWith('dropped') || first) {"
                        + " first = first && !String(path).startsWith('dropped'); return real(path, options); }"
                        + " return held.then(() => real(path, options)); }; })()");
        browser.upload("#files", plain(), table());
        browser.until("document.querySelectorAll('.new-lesson').length === 1");
        assertThat(browser.text("#new-reading")).isEqualTo("1 document still being read\u2026");
        assertThat(browser.value("document.querySelector('#make').disabled")).isEqualTo(true);
        browser.value("letGo()");
        browser.until("document.querySelectorAll('.new-lesson').length === 2");
        browser.until("!document.querySelector('#make').disabled");
        assertThat(browser.text("#new-reading")).isEmpty();
        browser.click("#make");
        browser.until("homeState.course.today && !document.querySelector('#today').hidden");
        assertThat(folder.resolve("user/wheels/Lesson 2.md")).exists();
    }

    /** The browser can't show one of them; another one is taken over all the same. */
    @Test
    void aDocumentThatFailsLeavesNoneWaiting() throws IOException {
        browser.click("#new-first");
        browser.type("#new-title", "Wheels");
        browser.value("(() => { const real = Array.prototype.sort; Array.prototype.sort = function (by) {"
                + " if (!this[0]?.file) return real.call(this, by);"
                + " Array.prototype.sort = real; window.planted = true; throw new Error('planted'); }; })()");
        browser.upload("#files", plain(), table());
        browser.until("window.planted && document.querySelector('#new-reading').textContent === ''");
        browser.upload("#files", table());
        browser.until(
                "document.querySelectorAll('.new-lesson').length > 0 && !document.querySelector('#make').disabled");
        assertThat(browser.text("#new-reading")).isEmpty();
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

    @Test
    void lessonsAreAddedToACourse() throws Exception {
        Path course = Files.createDirectories(folder.resolve("user/wheels"));
        Files.writeString(course.resolve("course.yaml"), "title: Wheels\nlessons: [one.md]  # in this order\n");
        Files.writeString(course.resolve("one.md"), "One line.\n");
        assertThat(browser.awaited("fetch('act', { method: 'POST', headers: { 'Content-Type': 'application/json' },"
                        + " body: JSON.stringify({ do: 'open', folder: '" + course + "' }) }).then(a => a.status)"))
                .isEqualTo(200L);
        browser.until("homeState.course.today");
        browser.press("s");
        browser.until("document.querySelector('#new-lesson')");
        browser.lookAtEverySize("scripts-add");
        browser.click("#add-lessons");
        browser.upload("#files", plain());
        browser.until("document.querySelectorAll('.new-lesson').length === 1");
        assertThat(browser.text("#new")).contains("Add lessons to Wheels", "Add them");
        browser.lookAtEverySize("new-lessons");
        browser.click("#make");
        browser.until("document.querySelectorAll('#script-list li').length === 2");
        assertThat(course.resolve("course.yaml"))
                .content()
                .isEqualTo("title: Wheels\nlessons: [one.md, Lesson 1.md]  # in this order\n");

        browser.click("#new-lesson");
        browser.type("#lesson-title", "The \"true\" rim", Keys.ENTER);
        browser.until("document.querySelector('#text')?.value.includes('title: ')");
        assertThat(course.resolve("the-true-rim.md"))
                .content()
                .startsWith("---\ntitle: \"The \\\"true\\\" rim\"\n---\n");
        assertThat(course.resolve("course.yaml")).content().contains("Lesson 1.md, the-true-rim.md]");
        assertThat(browser.errors()).isEmpty();
    }

    @Test
    void aPageThatShowsAnotherCourseDoesNothingToThisOne() throws Exception {
        for (String name : new String[] {"one", "two"}) {
            Path course = Files.createDirectories(folder.resolve("user/" + name));
            Files.writeString(course.resolve(name + ".md"), "One line.\n");
        }
        String post = "fetch('%s', { method: 'POST', headers: { 'Content-Type': 'application/json' },"
                + " body: JSON.stringify(%s) }).then(answer => answer.text())";
        browser.awaited(post.formatted("act", "{ do: 'open', folder: '" + folder.resolve("user/one") + "' }"));
        browser.until("homeState.course.folder.endsWith('one')");
        browser.value("(window.first = homeState.course.name)");
        browser.awaited(post.formatted("act", "{ do: 'open', folder: '" + folder.resolve("user/two") + "' }"));
        for (String asked : new String[] {
            "{ room: 'plan', do: 'set', path: 'pace', value: '100', of: first }",
            "{ room: 'new', do: 'add', of: first, lessons: [{ name: 'x.md', text: 'X.' }] }"
        }) {
            assertThat(browser.awaited(post.formatted("ask", asked)).toString()).contains("another course is open now");
        }
        assertThat(browser.awaited(post.formatted("act", "{ do: 'read', lesson: 'two', of: first }"))
                        .toString())
                .contains("another course is open now");
        assertThat(folder.resolve("user/two")).isDirectoryContaining("glob:**two.md");
        assertThat(folder.resolve("user/two/course.yaml")).doesNotExist();
        // What the page itself asks for names the course that it shows.
        assertThat(browser.awaited("import('./ask.js').then(ask => ask.ofCourse({}).of === homeState.course.name)"))
                .isEqualTo(true);
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
