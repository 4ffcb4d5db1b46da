package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.course.StoredDesk;
import org.bookholder.app.desk.DeskRequest;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Browser;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** A page that comes back to a desk that was started again, over a network that loses what is sent. */
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class DeskReturnTest {
    /** Requests that are to be lost fail as if there were no network; each that is sent or lost is noted. */
    private static final String LOSE = "window.asked = []; window.lose = []; const send = window.fetch;"
            + "window.fetch = async (path, options) => {"
            + "  const name = String(path).replace(/[?].*/, '');"
            + "  window.asked.push(name);"
            + "  const i = window.lose.indexOf(name);"
            + "  if (i >= 0) { window.lose.splice(i, 1); throw new TypeError('lost on the way'); }"
            + "  return send(path, options); };";

    @TempDir
    private Path folder;

    private Path session;

    @BeforeEach
    void write() throws ProblemException {
        Browser.needed();
        session = folder.resolve("session");
        StoredExamples.write(session, "lesson.md");
    }

    @Test
    void aPageComesBackAlthoughEachOfItsQuestionsIsLostOnce() throws ProblemException {
        try (Browser browser = new Browser()) {
            browser.beforeThePage(LOSE);
            try (StoredDesk desk = StoredDesk.of(StoredExamples.here(folder), session)) {
                browser.open(address(desk));
                browser.until("window.deskState && deskState.model.known");
                browser.value("(window.asked = [], window.lose = ['who', 'proof', 'join'])");
            }
            browser.until("document.querySelector('#link').textContent !== ''");
            try (StoredDesk desk = StoredDesk.of(StoredExamples.here(folder), session)) {
                address(desk);
                browser.until("window.lose.length === 0");
                browser.until("document.querySelector('#link').textContent === ''");
                assertThat(browser.value("document.querySelector('#door').hidden"))
                        .isEqualTo(true);
                assertThat(browser.value("window.asked"))
                        .as("the first question is lost; the proof; what it comes in with")
                        .isEqualTo(
                                List.of("who", "who", "proof", "who", "proof", "join", "who", "proof", "join", "who"));
            }
        }
    }

    /** As when a telephone wakes up while it is logging in. */
    @Test
    void twoReasonsToLogInAreOneLogin() throws ProblemException {
        try (Browser browser = new Browser()) {
            browser.beforeThePage(LOSE);
            try (StoredDesk desk = StoredDesk.of(StoredExamples.here(folder), session)) {
                browser.open(address(desk));
                browser.until("window.deskState && deskState.model.known");
                browser.value("(window.asked = [])");
            }
            browser.until("document.querySelector('#link').textContent !== ''");
            try (StoredDesk desk = StoredDesk.of(StoredExamples.here(folder), session)) {
                address(desk);
                String twice = "import('./door.js').then(({ enter }) => {"
                        + " const one = enter(() => {}, () => {});"
                        + " const other = enter(() => {}, () => {});"
                        + " return one.then(() => one === other); })";
                assertThat(browser.awaited(twice)).isEqualTo(true);
                browser.until("document.querySelector('#link').textContent === ''");
                assertThat(browser.value("window.asked.filter((name) => name === 'join').length"))
                        .isEqualTo(1L);
            }
        }
    }

    private static String address(StoredDesk desk) throws ProblemException {
        return desk.open(new DeskRequest(Optional.empty(), false, List.of())).address();
    }
}
