package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Note;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.Remark;
import org.bookholder.testing.Browser;
import org.bookholder.testing.Relay;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.openqa.selenium.Keys;

/** A page that has lost its network, or whose producer has scrolled away from the current place. */
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class DeskAwayTest {
    private static final int LINES = 80;

    @TempDir
    private Path folder;

    @AutoClose
    private LiveDesk desk;

    private Browser browser;

    @BeforeEach
    void open() throws ProblemException {
        Browser.needed();
        // The page is opened through another port, so the desk must accept that host name.
        desk = LiveDesk.open(folder, LINES, "--desk-name", "localhost");
        browser = desk.browser();
    }

    @Test
    void aPageNoticesADeadNetworkAndCatchesUpWithoutGapsOrRepeats() throws IOException {
        URI address = URI.create(desk.address());
        try (Relay network = new Relay(address.getPort())) {
            LiveDesk.show(browser, "http://localhost:" + network.port() + "/#" + address.getFragment());
            note("before");
            browser.until("deskState.model.notes.length === 1");
            // The page's clock can be advanced, so that the test does not have to wait.
            browser.value("(window.ahead = 0, window.now = Date.now, Date.now = () => window.now() + ahead)");
            network.die();
            note("meanwhile");
            desk.reads(40);
            browser.value("(window.ahead += 13000)");
            browser.until("document.querySelector('#link').textContent.startsWith('Connection lost')");
            assertThat(browser.value("deskState.model.notes.length")).isEqualTo(1L);
            network.live();
            // The connection that was tried meanwhile stays dead, and so does each that the browser keeps for later
            // requests:
            // the page must try until it gets a new one.
            browser.until("(window.ahead += 250, document.querySelector('#link').textContent === '')");
            browser.until("deskState.model.at.line === 40");
            note("after");
            browser.until("deskState.model.notes.length === 3");
            assertThat(browser.value("deskState.model.notes.map(n => n.text)"))
                    .isEqualTo(List.of("before", "meanwhile", "after"));
            browser.until("new Set(deskState.model.points.map(p => p[0])).size === deskState.model.points.length");
            assertThat(browser.value("document.querySelectorAll('#notes li').length"))
                    .isEqualTo(3L);
            assertThat(desk.listening()).as("connections of the one page").isEqualTo(1);
        }
    }

    /** As many connections as a browser keeps to one server die with the network, and it tries one after the other of them. */
    @Test
    void aPageIsBackSoonThoughAllItsConnectionsHaveDied() throws IOException {
        browser.beforeThePage("window.opened = 0;"
                + "window.EventSource = class extends EventSource {"
                + "  constructor(...where) { super(...where); window.opened += 1; } };");
        URI address = URI.create(desk.address());
        try (Relay network = new Relay(address.getPort())) {
            LiveDesk.show(browser, "http://localhost:" + network.port() + "/#" + address.getFragment());
            browser.awaited("Promise.all([1, 2, 3, 4, 5].map(() => fetch('who').then((answer) => answer.text())))");
            browser.value("(window.ahead = 0, window.now = Date.now, Date.now = () => window.now() + ahead)");
            network.die();
            browser.value("(window.ahead += 13000)");
            browser.until("document.querySelector('#link').textContent.startsWith('Connection lost')");
            network.live();
            browser.value("(window.back = Date.now())");
            while (!browser.text("#link").isEmpty()) {
                browser.value("(window.tried = opened, window.ahead += 3100)");
                browser.until("opened > tried || document.querySelector('#link').textContent === ''");
            }
            // Six connections of 3 s, each looked at after 2 s more; if each had the time of one that falls silent, 72
            // s.
            assertThat((Long) browser.value("Date.now() - window.back")).isLessThan(50_000);
        }
    }

    @Test
    void aPageThatMissesOneMessageNoticesItAndCatchesUp() {
        browser.beforeThePage("window.lose = 0; window.wholes = 0;"
                + "const listen = EventSource.prototype.addEventListener;"
                + "EventSource.prototype.addEventListener = function (name, take) {"
                + "  listen.call(this, name, (event) => {"
                + "    if (name === 'whole') window.wholes += 1;"
                + "    if (name === 'change' && window.lose > 0) window.lose -= 1; else take(event);"
                + "  }); };");
        LiveDesk.show(browser, desk.address());
        browser.value("(window.lose = 1)");
        note("lost on the way");
        browser.until("window.lose === 0");
        note("heard");
        browser.until("deskState.model.notes.length === 2");
        assertThat(browser.value("deskState.model.notes.map(n => n.text)"))
                .isEqualTo(List.of("lost on the way", "heard"));
        assertThat(browser.value("window.wholes")).isEqualTo(2L);
        LiveDesk.until(() -> desk.listening() == 1);
        note("after");
        browser.until("deskState.model.notes.length === 3");
        assertThat(browser.value("window.wholes")).isEqualTo(2L);
    }

    /** A browser makes six connections to one server at most (from memory; RFC 9112, section 9.4, asks for some limit). */
    @Test
    void worksWithMoreTabsThanABrowserHasConnections() {
        try (Browser tabs = Browser.withTabs()) {
            LiveDesk.show(tabs, desk.address());
            for (int tab = 2; tab <= 10; tab++) {
                tabs.openTab(desk.address());
                tabs.until(LiveDesk.ROLLING);
            }
            tabs.press("p");
            tabs.until("deskState.model.notes.length === 1");
            tabs.firstTab();
            tabs.until("deskState.model.notes.length === 1");
            assertThat(tabs.text("#link")).isEmpty();
            // The other tabs are hidden.
            LiveDesk.until(() -> desk.listening() == 1);
        }
    }

    /** As a browser says it that keeps a page for the way back. */
    @Test
    void aPageThatIsLeftGivesItsConnectionBack() {
        LiveDesk.show(browser, desk.address());
        browser.value("dispatchEvent(new PageTransitionEvent('pagehide', { persisted: true }))");
        LiveDesk.until(() -> desk.listening() == 0);
        browser.value("dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true }))");
        LiveDesk.until(() -> desk.listening() == 1);
        note("after");
        browser.until("deskState.model.notes.length === 1");
    }

    @Test
    void aReaderWhoScrollsAwayStaysThereUntilAKeyIsPressed() {
        LiveDesk.show(browser, desk.address());
        // The page's own scrolling does not count as scrolling away, even if its direction changes on the way.
        for (int line : List.of(30, 28, 60, 5, 45, 44, 46, 70, 20)) {
            desk.reads(line);
            browser.until("deskState.model.at.line === " + line);
        }
        browser.until(THERE);
        assertThat(follows()).isTrue();
        scrolledAway(() -> browser.swipe("#page", 400), 50);
        scrolledAway(() -> browser.value("(document.querySelector('#page').scrollTop = 0)"), 25);
        browser.value("document.querySelector('#page').focus()");
        scrolledAway(() -> browser.press(Keys.PAGE_DOWN), 60);
    }

    /** The page has stopped scrolling and the current row is where it belongs. */
    private static final String THERE = "(() => { const page = document.querySelector('#page');"
            + " const row = document.querySelector('.row.current');"
            + " return Math.abs(page.scrollTop - row.offsetTop + page.clientHeight * 0.38) < 2; })()";

    private void scrolledAway(Runnable away, int then) {
        away.run();
        browser.until("!document.querySelector('#follow').hidden");
        desk.reads(then);
        browser.until("deskState.model.at.line === " + then);
        Object top = browser.value("document.querySelector('#page').scrollTop");
        desk.reads(then + 1);
        browser.until("deskState.model.at.line === " + (then + 1));
        assertThat(follows()).isFalse();
        browser.press(Keys.ESCAPE);
        browser.until(THERE);
        assertThat(browser.value("document.querySelector('#page').scrollTop")).isNotEqualTo(top);
        assertThat(follows()).isTrue();
    }

    private boolean follows() {
        return Boolean.TRUE.equals(browser.value("document.querySelector('#follow').hidden"));
    }

    private void note(String text) {
        desk.tell(new NoteCommand.Add(new Remark.Noted(1, text, false)));
        LiveDesk.until(
                () -> desk.state().remarks().notes().stream().map(Note::text).anyMatch(text::equals));
    }
}
