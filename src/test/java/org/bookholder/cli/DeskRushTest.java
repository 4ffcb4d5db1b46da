package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.cli.LiveDesk.until;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.Remark;
import org.bookholder.testing.Browser;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** The desk when things go wrong or have to go fast. */
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class DeskRushTest {
    /** Requests for acts fail, as on a network that is gone. */
    private static final String AWAY = "(window.there = window.fetch, window.fetch = (path, options) =>"
            + " path === 'act' ? Promise.reject(new TypeError('away')) : window.there(path, options))";

    /** Requests for acts are refused. */
    private static final String REFUSED =
            "(window.there = window.fetch, window.fetch = (path, options) => path === 'act'"
                    + " ? Promise.resolve(new Response('somebody else has changed it', { status: 409 }))"
                    + " : window.there(path, options))";

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

    @Test
    void aMarkMadeWhileTheProgramIsAwayIsKeptAndSentOnce() {
        desk.reads(5);
        browser.until("document.querySelector('#foot [data-key=P]').textContent.startsWith('Mark line 4')");
        browser.value(AWAY);
        browser.press("p");
        browser.until("document.querySelector('#link').textContent.startsWith('1 act kept')");
        browser.press("h");
        browser.until("document.querySelector('#link').textContent.startsWith('Not done')");
        desk.reads(9);
        browser.until("deskState.model.at.line === 9");
        browser.value("window.fetch = window.there");
        until(() -> desk.state().remarks().notes().size() == 1);
        assertThat(desk.state().remarks().notes().get(0).line())
                .as("the line that was meant")
                .isEqualTo(4);
        assertThat(desk.state().takes().held()).as("a hold is refused aloud").isFalse();
    }

    /** What is shown for a while is over at once here; the page's clock is moved by hand. */
    @Test
    void aRefusedUndoStaysUntilItWasRead() throws IOException {
        browser.value("(window.timer = setTimeout, window.setTimeout = (f, ms) => timer(f, ms === 8000 ? 0 : ms))");
        browser.value("(window.ahead = 0, window.now = Date.now, Date.now = () => window.now() + ahead)");
        browser.press("p");
        browser.until("deskState.model.notes.length === 1 && deskState.model.people.undo");
        String refused = "Not done: somebody else has changed it.";
        browser.value(REFUSED);
        browser.press("u");
        browser.until("document.querySelector('#link').textContent === '" + refused + "'");
        desk.reads(9);
        browser.until("deskState.model.at.line === 9");
        assertThat(browser.text("#link")).isEqualTo(refused);
        assertThat(browser.seriousFaults()).isEmpty();
        browser.click("#link-close");
        browser.until("document.querySelector('#link').textContent === ''");

        browser.press("u");
        browser.until("document.querySelector('#link').textContent === '" + refused + "'");
        browser.value("(window.fetch = window.there)");
        browser.press("h");
        until(() -> desk.state().takes().held());
        assertThat(browser.text("#link")).as("too soon to have been read").isEqualTo(refused);
        browser.value("(window.ahead = 9000)");
        browser.press("h");
        until(() -> !desk.state().takes().held());
        browser.until("document.querySelector('#link').textContent === ''");
    }

    @Test
    void aReadyPhraseIsSentAndShowsWhenItWasSeen() {
        browser.click("#phrases button");
        until(() -> desk.state().remarks().message().isPresent());
        browser.until("document.querySelector('#said').textContent.includes('not shown yet: A little slower')");
        desk.tell(new NoteCommand.Add(new Remark.Shown(1)));
        browser.until("document.querySelector('#said').textContent.startsWith('shown at 0')");
        browser.press("u");
        browser.until("document.querySelector('#said').textContent === 'taken back'");
    }

    @Test
    void anOrderlyEndIsNotCalledALostConnection() {
        desk.end();
        browser.until("document.querySelector('#link').textContent.startsWith('Session ended')");
        assertThat(browser.value("[...document.querySelectorAll('#foot [data-key]')]"
                        + ".filter(b => !b.disabled).map(b => b.dataset.key)"))
                .as("acts that could still do something later")
                .isEqualTo(List.of("P", "A"));
    }

    @Test
    void onAPhoneTheProducerSeesAllWithoutScrolling() throws IOException {
        browser.size(390, 844);
        desk.reads(15);
        browser.until("document.querySelector('#foot [data-key=P]').textContent.startsWith('Mark line 14')");
        browser.press("p");
        browser.until("document.querySelector('#strip-open').textContent === '1 to pick up'");
        browser.picture("phone-light-390");
        for (String seen : List.of(
                "#strip-pace",
                "#strip-reading",
                "#strip-open",
                ".row.current",
                "#foot [data-key=P]",
                "#foot [data-key=A]",
                "#foot [data-key=H]",
                "#foot [data-key=N]")) {
            browser.until(
                    "(box => box.height > 0 && box.top >= 0 && box.bottom <= innerHeight && box.right <= innerWidth)"
                            + "(document.querySelector('" + seen + "').getBoundingClientRect())");
        }
        assertThat(browser.value("scrollY")).isEqualTo(0L);
        browser.click("#foot .more");
        browser.until("document.querySelector('#foot [data-key=Z]').offsetHeight > 0");
    }

    /** A window of 1440 by 900 pixels at 200 % (WCAG 2.2, success criterion 1.4.4) has half as many. */
    @Test
    void twiceAsLargeTheListStaysUsable() throws IOException {
        browser.press("p");
        browser.until("deskState.model.notes.length === 1");
        browser.size(720, 450);
        browser.press("2");
        browser.until("document.querySelector('#items .item').offsetHeight > 0");
        assertThat(browser.value("document.querySelector('#items').clientHeight"
                        + " >= document.querySelector('#items').scrollHeight"))
                .as("nothing of the list is cut off")
                .isEqualTo(true);
        assertThat(browser.value("document.documentElement.scrollWidth <= innerWidth"))
                .isEqualTo(true);
        browser.picture("review-zoomed");
    }

    @Test
    void coloursOfTheSystemKeepEveryMark() throws IOException {
        desk.reads(5);
        browser.until("deskState.model.at.line === 5");
        browser.press("p");
        browser.until("deskState.model.notes.length === 1");
        browser.forcedColours();
        assertThat(browser.value("getComputedStyle(document.querySelector('.row.current')).borderLeftWidth"))
                .isEqualTo("4px");
        assertThat(browser.value("getComputedStyle(document.querySelector('.row.pickup .time'), '::after').content"))
                .isEqualTo("\"\u25e3\"");
        assertThat(browser.value("getComputedStyle(document.querySelector('[data-view=live]')).borderTopWidth"))
                .isEqualTo("3px");
        assertThat(browser.value("getComputedStyle(document.querySelector('.meter')).borderTopWidth"))
                .isEqualTo("1px");
        browser.picture("live-forced-colours");
    }

    @Test
    void thePlotHasItsTargetAndTheTakesBefore() {
        String code = "import('./plot.js').then(({ pacePlot }) => { const host = document.createElement('div');"
                + "pacePlot(host, [[0, 1, 90], [1, 1, 100], [9, 2, 110], [10, 2, 120]], 2, 105, 0.1);"
                + "return [host.querySelectorAll('.target').length, host.querySelectorAll('.curve.before').length,"
                + "host.querySelectorAll('.curve:not(.before)').length,"
                + "[...host.querySelectorAll('text')].map(t => t.textContent).includes('105')]; })";
        assertThat(browser.awaited(code)).isEqualTo(List.of(1L, 1L, 1L, true));
    }

    /** The page's clock is set by the program's, whatever the device thinks. */
    @Test
    void timesOfDayAreTheProgramsOwn() {
        String code = "import('./daytime.js').then(m => { m.learnZone('Asia/Tokyo');"
                + "m.learnTime({ headers: { get: () => 'Mon, 03 Jun 2030 01:02:03 GMT' } });"
                + "return [m.clockTime().slice(0, 5), m.timeOf(0), m.dayOf(0)]; })";
        assertThat(browser.awaited(code)).isEqualTo(List.of("10:02", "09:00", "1 January 1970"));
    }
}
