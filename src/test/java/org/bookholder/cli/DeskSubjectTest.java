package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.cli.LiveDesk.until;

import java.nio.file.Path;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Note;
import org.bookholder.testing.Browser;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.openqa.selenium.Keys;

/** Marks and notes go to the line that the producer means, and the button says which that is. */
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class DeskSubjectTest {
    @TempDir
    private Path folder;

    @AutoClose
    private LiveDesk desk;

    private Browser browser;

    @BeforeEach
    void open() throws ProblemException {
        Browser.needed();
        desk = LiveDesk.open(folder, 20);
        browser = desk.page();
    }

    private void reads(int line) {
        desk.reads(line);
        browser.until("deskState.model.at.line === " + line);
    }

    /** Waits until a button names its subject; it changes only after a person has had time to see it. */
    private void says(String key, String words) {
        browser.until("document.querySelector('#foot [data-key=" + key + "] span').textContent === '" + words + "'");
    }

    private List<Note> notes() {
        return desk.state().remarks().notes();
    }

    @Test
    void theButtonNamesTheLineThatIsMarked() {
        reads(7);
        says("P", "Mark line 6");
        browser.press("p");
        until(() -> notes().size() == 1);
        assertThat(notes().get(0).line()).isEqualTo(6);
        says("U", "Undo mark on line 6");
        browser.click("[data-line='3']");
        says("P", "Mark line 3");
        says("J", "Send to line 3");
        browser.press(Keys.ESCAPE);
        says("P", "Mark line 6");
        assertThat(browser.value("document.querySelector('#foot [data-key=J]').disabled"))
                .isEqualTo(true);
        browser.press("u");
        until(() -> notes().isEmpty());
        says("U", "Undo");
    }

    @Test
    void theButtonNamesTheNewLineAlsoIfNothingElseIsTold() {
        says("P", "Mark line 1");
        desk.reads(7);
        until(() -> desk.state().following().position().line() == 7);
        desk.whileNothingIsTold(() -> {
            browser.until("deskState.model.at.line === 7");
            says("P", "Mark line 6");
            says("A", "Note on line 6");
        });
        browser.press("p");
        until(() -> notes().size() == 1);
        assertThat(notes().get(0).line()).isEqualTo(6);
    }

    @Test
    void aNoteGoesToTheLineThatWasReadWhenItsFirstLetterWasTyped() {
        reads(5);
        says("A", "Note on line 4");
        browser.press("a");
        browser.press("shadow");
        reads(12);
        says("P", "Mark line 11");
        assertThat(browser.text("#note-label")).isEqualTo("Note on line 4");
        browser.press(" on the cheek");
        browser.press(Keys.ENTER);
        until(() -> notes().size() == 1);
        assertThat(notes().get(0).line()).isEqualTo(4);
        assertThat(notes().get(0).text()).isEqualTo("shadow on the cheek");
        says("A", "Note on line 11");
    }

    @Test
    void aNoteIsChangedInTheListAndInTheReview() {
        browser.press("a");
        browser.press("to dark");
        browser.press(Keys.ENTER);
        browser.until("document.querySelector('#notes button')");
        browser.click("#notes button");
        browser.press(Keys.chord(Keys.CONTROL, "a"));
        browser.press("too dark");
        browser.press(Keys.ENTER);
        until(() -> notes().get(0).text().equals("too dark"));
        browser.until("document.querySelector('#notes').textContent.includes('too dark')");
        browser.press("2");
        browser.choose("#f-reason", "all");
        browser.until("document.querySelector('#line-note')");
        browser.type("#line-note", "the lamp moved", Keys.ENTER);
        until(() -> notes().size() == 2);
        browser.until("document.querySelectorAll('#line-notes li').length === 2");
        assertThat(notes().get(1).line()).isEqualTo(1);
    }

    /** The page's own code, with its clock and the reading moved by hand. */
    @Test
    void aChoiceLapsesWhenTheReadingHasMovedOn() {
        String code = "import('./subject.js').then(({ lapsing }) => {"
                + "let time = 0; const at = { line: 5, rolling: true, held: false };"
                + "const choice = lapsing(() => at, () => time); const had = [];"
                + "const look = (line, t) => { at.line = line; time = t; had.push(choice.get()); };"
                + "choice.set(3); look(6, 9000); look(7, 4000); at.held = true; look(7, 9000);"
                + "at.held = false; look(7, 9000); look(5, 9001); return had; })";
        assertThat(browser.awaited(code)).isEqualTo(List.of(3L, 3L, 3L, 0L, 0L));
    }
}
