package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Browser;
import org.bookholder.view.input.Action;
import org.bookholder.view.input.KeyMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.Keys;

/** The page without a mouse. */
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class DeskKeysTest {
    private static final String CAN_BE_USED = "button:not(:disabled), input:not(:disabled), select, summary, a[href]";
    private static final int MOST = 80;

    @TempDir
    private Path folder;

    /** WCAG 2.2, success criteria 2.1.1 (all by keyboard) and 2.4.7 (the focus is seen). */
    @ParameterizedTest
    @ValueSource(strings = {"1", "2", "3"})
    void tabLeadsToEverythingAndShowsWhereItIs(String view) throws ProblemException {
        Browser.needed();
        try (LiveDesk desk = LiveDesk.open(folder, 12)) {
            Browser browser = desk.page();
            browser.press("p");
            browser.until("deskState.model.notes.length === 1");
            browser.press(view);
            browser.value("document.activeElement.blur()");
            for (int i = 0; i < MOST; i++) {
                browser.press(Keys.TAB);
                browser.value(
                        "(e => { e.dataset.reached = getComputedStyle(e).outlineStyle; })(document.activeElement)");
            }
            assertThat(list(
                            browser,
                            "[...document.querySelectorAll('" + CAN_BE_USED + "')]"
                                    + ".filter(e => e.offsetParent && !e.dataset.reached).map(e => e.outerHTML)"))
                    .as("never reached")
                    .isEmpty();
            assertThat(list(
                            browser,
                            "[...document.querySelectorAll('[data-reached=none]')]"
                                    + ".filter(e => e !== document.body).map(e => e.outerHTML)"))
                    .as("reached and not seen")
                    .isEmpty();
        }
    }

    /** WCAG 2.2, success criterion 2.1.4: single keys can be turned off, and on again. */
    @Test
    void singleKeysCanBeLeftToOtherPrograms() throws ProblemException {
        Browser.needed();
        try (LiveDesk desk = LiveDesk.open(folder, 12)) {
            Browser browser = desk.page();
            turnSingleKeys(browser);
            browser.until("!document.querySelector('#keys').open");
            browser.press("p");
            browser.press("h");
            turnSingleKeys(browser);
            browser.press("p");
            browser.until("deskState.model.notes.length === 1");
            assertThat(desk.state().takes().held()).isFalse();
        }
    }

    /** Turns single keys off, or on again, in the list of keys. */
    private static void turnSingleKeys(Browser browser) {
        browser.press("?");
        browser.until("document.querySelector('#keys').open");
        browser.press(Keys.SPACE);
        browser.press(Keys.ESCAPE);
    }

    /** What the desk's keys do in the window, where they do anything there. */
    private static final Map<String, Action> SHARED = Map.of(
            "P", Action.MARK_PICKUP,
            "H", Action.HOLD,
            "N", Action.NEXT_TAKE,
            "C", Action.CUT,
            "R", Action.ROUND,
            "Z", Action.BREAK,
            "U", Action.UNDO,
            "Up", Action.ROW_UP,
            "Down", Action.ROW_DOWN,
            "Esc", Action.QUIT);

    @Test
    void noKeyDoesOneThingInTheWindowAndAnotherAtTheDesk() throws ProblemException {
        Browser.needed();
        try (LiveDesk desk = LiveDesk.open(folder, 12)) {
            Browser browser = desk.page();
            List<?> keys = (List<?>) browser.awaited("import('./actions.js').then(m => m.liveKeys().map(([key]) =>"
                    + " key.replace('\u2191 \u2193', 'Up')))");
            assertThat(keys).hasSizeGreaterThan(SHARED.size());
            for (Object key : keys) {
                assertThat(KeyMap.usual().action((String) key))
                        .as("key " + key + " in the window")
                        .isEqualTo(Optional.ofNullable(SHARED.get(key)));
            }
        }
    }

    private static List<?> list(Browser browser, String expression) {
        return (List<?>) browser.value(expression);
    }
}
