package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.review.ReviewSession;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Browser;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.openqa.selenium.Keys;
import picocli.CommandLine;

/** Somebody who logged in with the viewers' code sees everything and can change nothing. */
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class ViewerPageTest {
    @TempDir
    private Path folder;

    @Test
    void aViewerSeesEverythingAndCannotAct() throws IOException, ProblemException {
        Browser.needed();
        Path session = folder.resolve("session");
        StoredExamples.write(session, "lesson.md");
        Environment here = StoredExamples.here(folder);
        DeskOptions options = new DeskOptions();
        new CommandLine(options).parseArgs("--desk-on-network");
        try (ReviewSession review = ReviewSession.of(here, session);
                RunningDesk desk =
                        RunningDesk.of(here, options.request(), session, SessionDirectory.of(review.place()));
                Browser browser = new Browser()) {
            RunningDesk.NetworkAddress there = desk.network().orElseThrow();
            assertThat(desk.invitation()).contains(there.joinCode()).doesNotContain(there.lookCode());
            browser.size(1440, 900);
            browser.open("http://127.0.0.1:" + there.port() + "/");
            browser.until("!document.querySelector('#door').hidden");
            browser.lookAtEverySize("door");
            browser.type("#code", "AAAA-AAAA", Keys.ENTER);
            browser.until("document.querySelector('#refused').textContent !== ''");
            browser.type("#code", there.lookCode(), Keys.ENTER);
            browser.until("window.deskState && deskState.model.known");
            browser.until("document.querySelectorAll('#items .item').length === 4");
            assertThat(browser.value("[...document.querySelectorAll('[data-choice]')].every(b => b.disabled)"))
                    .isEqualTo(true);
            browser.press("x");
            browser.press("w");
            browser.until("document.querySelector('#handoff').open");
            assertThat(browser.value("document.querySelector('#write').disabled"))
                    .isEqualTo(true);
            assertThat(browser.awaited("fetch('act', {method: 'POST', headers: {'Content-Type': 'application/json'},"
                            + " body: '{\"do\":\"mark\",\"line\":1}'}).then(answer => answer.status)"))
                    .isEqualTo(403L);
            assertThat(review.state().get().remarks().acts().standing()).isEmpty();
            assertThat(review.state().get().remarks().notes()).hasSize(1);
        }
    }
}
