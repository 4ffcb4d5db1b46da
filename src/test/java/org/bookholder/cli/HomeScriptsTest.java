package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.bookholder.journal.SaidNotes;
import org.bookholder.testing.Browser;
import org.bookholder.testing.FakeEars;
import org.bookholder.testing.FakeEquipment;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.openqa.selenium.Keys;

/** The room in which scripts are written. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class HomeScriptsTest {
    private static final String WHEEL = """
        ---
        title: A wheel you can trust
        author: Somebody
        ---
        Good morning, and welcome to the shed in which my aunt Wendlebury mended every wheel of the village for forty years.
        Buy 12 spokes at $2.50 each; [this shop](http://spokes.example) has them.

        > Hold one up to the window.

        It weighs 7 g. She sells six silver spokes.
        """;

    @TempDir
    private Path folder;

    private Path course;

    @AutoClose
    private PageAtHome page;

    private Browser browser;

    @BeforeEach
    void open() throws Exception {
        Browser.needed();
        course = Files.createDirectories(folder.resolve("user/wheels"));
        Files.writeString(course.resolve("lesson-1.md"), WHEEL);
        Files.writeString(course.resolve("lesson-2.md"), "> Nothing to be said yet.\n");
        try (XWPFDocument document = new XWPFDocument();
                OutputStream out = Files.newOutputStream(course.resolve("lesson-3.docx"))) {
            document.createParagraph().createRun().setText("Now we true the wheel.");
            document.write(out);
        }
        FakeEquipment equipment = new FakeEquipment();
        equipment.hears(new FakeEars(List.of()).knowsNot("wendlebury"));
        page = PageAtHome.start(folder, equipment, Optional.of(course));
        browser = page.show();
    }

    @Test
    void aScriptIsWrittenBesideHowItWillBeRead() throws IOException {
        browser.press("s");
        browser.until("document.querySelectorAll('.script-row').length === 3");
        assertThat(browser.text("#script-list"))
                .contains("A wheel you can trust", "has no words to read yet", "lesson-3.docx");
        browser.lookAtEverySize("scripts-list");
        browser.click("#script-1");
        browser.until("document.querySelectorAll('.look-row').length === 7");
        assertThat(browser.text("#look-at"))
                .contains("at 100 words a minute", "1 word the recogniser does not know", "Left out: a link's address")
                .contains(
                        "Left out: a setting for other programs",
                        "syllables without a breath mark",
                        "words that begin alike");
        browser.lookAtEverySize("scripts-editor");

        browser.click(".say-word.unknown");
        browser.until("document.querySelector('#say-as')");
        browser.picture("scripts-say-unknown");
        browser.type("#say-as", "wendle berry", Keys.ENTER);
        browser.until("document.querySelector('#text').value.includes('aunt [Wendlebury](say:wendle berry) mended')");
        browser.until("!document.querySelector('.say-word.unknown')");
        browser.click("[data-key='6/$2.50/0']");
        browser.until("document.querySelector('#look-at').textContent.includes('two dollars fifty')");
        browser.picture("scripts-say-number");
        browser.type("#say-as", "two fifty", Keys.ENTER);
        browser.until("document.querySelector('#text').value.includes('[$2.50](say:two fifty) each')");
        assertThat(course.resolve("lesson-1.md")).content().isEqualTo(WHEEL);

        browser.click("#text");
        browser.press(Keys.chord(Keys.CONTROL, "s"));
        browser.until("document.querySelector('#saved').textContent === 'Saved'");
        assertThat(course.resolve("lesson-1.md"))
                .content()
                .isEqualTo(WHEEL.replace("Wendlebury", "[Wendlebury](say:wendle berry)")
                        .replace("$2.50", "[$2.50](say:two fifty)"));
        assertThat(browser.errors()).isEmpty();
    }

    @Test
    void howThingsAreSaidIsChosenForTheCourseAndHeardAgain() throws Exception {
        Path session = folder.resolve("data/sessions/one");
        Path read = Files.writeString(course.resolve("lesson-4.md"), StoredExamples.script());
        StoredExamples.write(session, read.toString());
        new SaidNotes(
                        course.toString(),
                        List.of(
                                new SaidNotes.Said("7 g", "seven grams", "seven g", 4, 1, 2, 2.6),
                                new SaidNotes.Said("7 g", "seven grams", "seven g", 4, 1, 9, 9.6)))
                .keep(session);
        choose(course);
        browser.until("document.body.textContent.includes('record line 6')");
        browser.press("s");
        browser.until("document.querySelector('#script-1')");
        browser.click("#script-1");
        browser.until("document.querySelector('#said')");
        browser.tabTo("#said summary");
        browser.press(Keys.ENTER);
        browser.until("document.querySelector('#said').open");
        assertThat(browser.text("#said")).contains("7 g “seven g”", "said 2 times");
        browser.value("(window.heard = [], HTMLMediaElement.prototype.play = function () {"
                + " heard.push(this.src + ' ' + this.currentTime); return Promise.reject(new Error('silent')); }, 0)");
        browser.click("#said .hear-said");
        assertThat(String.valueOf(browser.value("heard[0]"))).contains("/takes/1.wav ");
        assertThat(browser.awaited("fetch(heard[0].split(' ')[0]).then(answer => answer.status)"))
                .isEqualTo(200L);

        browser.click("[data-key='6/$2.50/0']");
        browser.until("document.querySelector('#say-as')");
        browser.value("document.querySelector('#say-as').value = ''");
        browser.type("#say-as", "two fifty");
        browser.tabTo("#say-in-course");
        browser.picture("scripts-say-in-course");
        browser.press(Keys.ENTER);
        browser.until("document.querySelectorAll('.saying-row').length === 2 && document.querySelector('#said').open");
        assertThat(browser.text("#said")).contains("$2.50 “two fifty”", "chosen by you");
        assertThat(course.resolve("course.yaml")).content().contains("$2.50: two fifty");
        browser.lookAtEverySize("scripts-said");
        browser.click(".saying-row:first-child .quiet");
        browser.until("document.querySelectorAll('.saying-row').length === 1");
        assertThat(course.resolve("course.yaml")).content().isEmpty();
        assertThat(course.resolve("lesson-1.md")).content().isEqualTo(WHEEL);
        assertThat(browser.errors()).isEmpty();
    }

    @Test
    void whatIsHeardAsSomethingElseIsListedAndForgotten() throws IOException {
        Path presenters = Files.createDirectories(folder.resolve("settings/presenters"));
        Files.writeString(presenters.resolve("presenter.heard.txt"), "word hub: hop\nword rim: ring\n");
        Files.writeString(presenters.resolve("ann.heard.txt"), "word spokes: folks\n");
        browser.press("s");
        browser.until("document.querySelector('#script-1')");
        browser.click("#script-1");
        browser.until("document.querySelector('#heard')");
        browser.tabTo("#heard summary");
        browser.press(Keys.ENTER);
        browser.until("document.querySelector('#heard').open");
        assertThat(browser.text("#heard"))
                .contains(
                        "Heard as something else (3)",
                        "hub heard as “hop”",
                        "spokes heard as “folks”",
                        "when ann reads it");
        browser.lookAtEverySize("scripts-heard");
        browser.value("document.querySelector('#heard').scrollIntoView()");
        browser.picture("scripts-heard-list");
        browser.click("#heard [aria-label='Forget that spokes is heard as folks']");
        browser.until(
                "document.querySelectorAll('#heard .saying-row').length === 2 && document.querySelector('#heard').open");
        assertThat(browser.value("document.activeElement.closest('#heard') !== null"))
                .isEqualTo(true);
        assertThat(presenters.resolve("ann.heard.txt")).content().isEmpty();
        assertThat(presenters.resolve("presenter.heard.txt")).content().contains("word hub: hop");
        assertThat(browser.errors()).isEmpty();
    }

    @Test
    void whoseLinesAreReadIsChosenByMouseAndByKeys() throws IOException {
        Path talk = Files.writeString(
                course.resolve("lesson-1.md"),
                "HOST: Where is the hub?\n\nGUEST: In the middle.\n\nHOST: Thank you.\n\nGUEST: Goodbye.\n");
        browser.press("s");
        browser.until("document.querySelector('#script-1')");
        browser.click("#script-1");
        browser.until("document.querySelectorAll('#speakers input').length === 2");
        assertThat(browser.text("#speakers")).contains("Whose lines are read", "HOST", "GUEST");
        browser.click("#speakers label:nth-of-type(2)");
        browser.until("document.querySelectorAll('.look-row .n').length"
                + " && [...document.querySelectorAll('.look-row .n')].filter(n => n.textContent).length === 2");
        assertThat(browser.value("document.querySelector('#text').value.split('\\n', 3).join('|')"))
                .isEqualTo("---|speaker: \"HOST\"|---");
        browser.lookAtEverySize("scripts-speakers");

        browser.tabTo("#speakers input[value=GUEST]");
        browser.press(" ");
        browser.until("[...document.querySelectorAll('.look-row .n')].filter(n => n.textContent).length === 4");
        assertThat(browser.value("document.activeElement.value")).isEqualTo("GUEST");
        browser.tabTo("#speakers input[value=HOST]");
        browser.press(" ");
        browser.until("[...document.querySelectorAll('.look-row .n')].filter(n => n.textContent).length === 2");
        browser.press(Keys.chord(Keys.CONTROL, "s"));
        browser.click("#save");
        browser.until("document.querySelector('#saved').textContent === 'Saved'");
        assertThat(talk).content().startsWith("---\nspeaker: \"GUEST\"\n---\nHOST: Where");
        assertThat(browser.errors()).isEmpty();
    }

    @Test
    void problemsAreShownBesideTheTextAndFixedThere() {
        browser.press("s");
        browser.until("document.querySelector('#script-2')");
        browser.click("#script-2");
        browser.until("document.querySelector('#look-at .wrong-card')");
        browser.press(Keys.chord(Keys.CONTROL, Keys.END));
        browser.press("\nBuy [12](say:a dozen");
        browser.until("document.querySelector('#look-at').textContent.includes('Line 3: the spoken form')");
        browser.press(").");
        browser.until("document.querySelectorAll('.look-row').length === 2");
        browser.click("#save");
        browser.until("document.querySelector('#saved').textContent === 'Saved'");
        browser.until("homeState.course.today.rest.concat(homeState.course.today.order)"
                + ".every(row => row.kind !== 'unreadable')");
    }

    @Test
    void aChangeFromOutsideIsNeverOverwritten() throws IOException {
        browser.press("s");
        browser.until("document.querySelector('#script-1')");
        browser.click("#script-1");
        browser.until("document.querySelectorAll('.look-row').length === 7");
        Files.writeString(course.resolve("lesson-1.md"), "Written elsewhere.\n");
        browser.until("document.querySelector('#text').value === 'Written elsewhere.\\n'");

        browser.press(Keys.chord(Keys.CONTROL, Keys.END));
        browser.press("Mine.");
        Files.writeString(course.resolve("lesson-1.md"), "Written elsewhere again.\n");
        browser.press(Keys.chord(Keys.CONTROL, "s"));
        browser.until("document.querySelector('#keep-mine')");
        browser.lookAtEverySize("scripts-outside");
        assertThat(course.resolve("lesson-1.md")).content().isEqualTo("Written elsewhere again.\n");
        browser.click("#keep-mine");
        browser.until("document.querySelector('#saved').textContent.startsWith('Saved; the other text is kept in')");
        assertThat(course.resolve("lesson-1.md")).content().isEqualTo("Written elsewhere.\nMine.");
        try (Stream<Path> files = Files.list(course)) {
            assertThat(files.filter(file -> file.getFileName().toString().startsWith("lesson-1.md.kept-")))
                    .singleElement()
                    .satisfies(kept -> assertThat(kept).content().isEqualTo("Written elsewhere again.\n"));
        }
    }

    @Test
    void typedTextIsThereAgainAfterThePageWasClosed() {
        browser.press("s");
        browser.until("document.querySelector('#script-1')");
        browser.click("#script-1");
        browser.until("document.querySelector('#text')");
        browser.press("Before all. ");
        browser.until("Object.values(localStorage).some(text => text.includes('Before all. '))");
        // The page asks before it is left; this is a browser that was killed.
        browser.openTab(String.valueOf(browser.value("location.href")));
        browser.until("document.querySelector('#text')?.value.startsWith('Before all. ')");
        assertThat(browser.text("#saved")).contains("not saved yet");
    }

    @Test
    void anotherCourseClosesTheEditorAndWhatWasTypedIsKept() throws IOException {
        Path other = Files.createDirectories(folder.resolve("user/sails"));
        Files.writeString(other.resolve("lesson-1.md"), "# Hoist a sail\n\nPull slowly.\n");
        browser.press("s");
        browser.until("document.querySelector('#script-1')");
        browser.click("#script-1");
        browser.until("document.querySelectorAll('.look-row').length === 7");
        browser.press("Before all. ");
        browser.until("Object.values(localStorage).some(text => text.includes('Before all. '))");

        choose(other);
        browser.until("document.querySelector('#script-list')?.textContent.includes('Hoist a sail')");
        assertThat(browser.value("document.querySelector('#text')")).isNull();
        assertThat(browser.value("location.search")).isEqualTo("?view=scripts");
        browser.click("#script-1");
        browser.until("document.querySelector('#text')?.value.includes('Pull slowly.')");
        browser.press("First. ");
        browser.until("document.querySelector('#look-at').textContent.includes('First.')");

        choose(course);
        browser.until("document.querySelector('#script-list')?.textContent.includes('A wheel you can trust')");
        assertThat(browser.text("#script-list")).contains("not saved yet");
        browser.click("#script-1");
        browser.until("document.querySelector('#text')?.value.startsWith('Before all. ')");
        // What the page still asked about the course before, until it knew of the other one, was refused.
        assertThat(browser.errors()).allMatch(error -> error.contains("409 (Conflict)"));
    }

    @Test
    void aTextThatTheBrowserHasNoRoomForIsNamed() {
        browser.press("s");
        browser.until("document.querySelector('#script-1')");
        browser.click("#script-1");
        browser.until("document.querySelectorAll('.look-row').length === 7");
        browser.value("(Storage.prototype.setItem = () => { throw new DOMException('', 'QuotaExceededError'); }, 0)");
        browser.press("More. ");
        browser.until("document.querySelector('#saved').textContent.includes('too long to be kept in the browser')");
        browser.until("document.querySelector('#look-at').textContent.includes('More.')");
        browser.click("#save");
        browser.until("document.querySelector('#saved').textContent === 'Saved'");
    }

    /** As another tab would. */
    private void choose(Path opened) {
        browser.value("fetch('act', { method: 'POST', headers: { 'Content-Type': 'application/json' },"
                + " body: JSON.stringify({ do: 'open', folder: '" + opened + "' }) }).then(answer => answer.ok)");
    }

    @Test
    void aDocumentBecomesATextFile() {
        browser.press("s");
        browser.until("document.querySelector('#script-3')");
        browser.click("#script-3");
        browser.until("document.querySelector('#as-text')");
        browser.press(Keys.ENTER);
        browser.until("document.querySelector('#h-scripts').textContent === 'lesson-3.md'");
        browser.until("document.querySelector('#save')");
        assertThat(course.resolve("documents/lesson-3.docx")).exists();
        assertThat(course.resolve("lesson-3.docx")).doesNotExist();
        assertThat(course.resolve("lesson-3.md")).content().isEqualTo("Now we true the wheel.\n\n");
    }
}
