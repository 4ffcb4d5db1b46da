package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.testing.Browser;
import org.bookholder.testing.FakeEquipment;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** What the settings show of the sessions that are kept. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class HomeStorageTest {
    @TempDir
    private Path folder;

    @AutoClose
    private PageAtHome page;

    private Browser browser;

    @BeforeEach
    void open() throws Exception {
        Browser.needed();
        Files.createDirectories(folder.resolve("data/sessions"));
        StoredExamples.write(folder.resolve("data/sessions/2026-03-02-0900-a-lesson"), "lesson.md");
        StoredExamples.write(folder.resolve("data/sessions/2026-03-03-0900-a-lesson"), "lesson.md");
        page = PageAtHome.start(folder, new FakeEquipment(), Optional.empty());
        browser = page.show();
    }

    @Test
    void anOldSessionIsRemovedAfterAskingTwice() throws IOException {
        browser.press("2");
        browser.until("document.querySelector('#storage details')");
        assertThat(browser.text("#storage")).contains("2 sessions,");
        browser.click("#storage summary");
        browser.lookAtEverySize("settings-storage");
        browser.click("#storage li button");
        browser.until("document.querySelector('#ask[open]')");
        assertThat(browser.value("document.querySelector('#remove-now').disabled"))
                .isEqualTo(true);
        browser.picture("settings-remove");
        browser.click("#remove-sure");
        browser.click("#remove-now");
        browser.until("document.querySelector('#storage').textContent.includes('1 session,')");
        assertThat(folder.resolve("data/sessions/2026-03-02-0900-a-lesson")).doesNotExist();
        assertThat(folder.resolve("data/sessions/2026-03-03-0900-a-lesson")).isDirectory();
    }

    @Test
    void theSettingsShowWhoIsInAndLetThemOut() throws IOException {
        try (Browser other = new Browser()) {
            other.size(1440, 900);
            other.open(page.address());
            other.until("window.homeState && homeState.courses");
            browser.press("2");
            browser.until("document.querySelectorAll('.device-list li').length === 2");
            assertThat(browser.text(".device-list")).contains("Chrome on Linux", "This browser", "On this machine");
            browser.lookAtEverySize("settings-devices");
            browser.click(".device-list button");
            browser.until("document.querySelectorAll('.device-list li').length === 1");
            other.until("!document.querySelector('#door').hidden");
            assertThat(browser.awaited("fetch('who').then(answer => answer.status)"))
                    .isEqualTo(200L);
        }
    }
}
