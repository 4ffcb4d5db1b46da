package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.bookholder.testing.Browser;
import org.bookholder.testing.ChildJvm;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.openqa.selenium.Keys;

/** The whole program, led from the desk's page alone: to the next lesson, and through a kill in the pickup round. */
@Timeout(value = 180, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class DeskNextLessonTest {
    private static final String KNOWN = "window.deskState && deskState.model.known && deskState.model.live";

    /** What is pressed within a moment of a change concerns what was shown before. */
    private static final String SEEN = "deskState.seenTake.value() === ";

    @TempDir
    private Path folder;

    private Program program;
    private String first;
    private String second;

    @BeforeEach
    void write() {
        Browser.needed();
        program = new Program(folder);
        first = program.file("one.md", "---\ntitle: One\n---\nThe first line of one.\n\nThe second line of one.\n");
        second = program.file("two.md", "---\ntitle: Two\n---\nThe only line of two.\n");
    }

    @Test
    void thePageGoesOverToTheNextLessonAndEndsTheDay() throws IOException, InterruptedException {
        try (ChildJvm child = read(first, second);
                Browser browser = new Browser()) {
            browser.open(address(child));
            browser.until(KNOWN + " && deskState.model.script.title === 'One'");
            browser.press("p");
            browser.until("deskState.model.at.open === 1");
            browser.until(SEEN + 1);
            browser.press("c");
            browser.until("document.querySelector('#foot').textContent.includes('Next lesson: Two')");
            browser.picture("next-lesson-offered");
            browser.press(Keys.ENTER);
            browser.until(KNOWN + " && deskState.model.script.title === 'Two' && deskState.model.at.rolling");
            // Nothing of the first lesson is left.
            assertThat(browser.value("deskState.model.at.open")).isEqualTo(0L);
            assertThat(browser.value("deskState.model.notes.length")).isEqualTo(0L);
            assertThat(browser.value("deskState.model.takes.length")).isEqualTo(1L);
            browser.until(SEEN + 1);
            browser.press("c");
            browser.until("document.querySelector('#foot').textContent.includes('End the day')");
            browser.press("q");
            assertThat(child.untilItEnds()).contains("Pickup list: Two", "exit status 0");
        }
    }

    @Test
    void whatIsDoneWhileThePageGoesOverIsNamedOnTheNext() throws IOException, InterruptedException {
        try (ChildJvm child = read(first, second);
                Browser browser = new Browser()) {
            // Somebody presses P when the page has given up the lesson and is just about to go.
            browser.beforeThePage("addEventListener('beforeunload', () => document.body?.dispatchEvent("
                    + "new KeyboardEvent('keydown', { key: 'p', bubbles: true })));");
            browser.open(address(child));
            browser.until(KNOWN + " && deskState.model.script.title === 'One'");
            browser.until(SEEN + 1);
            browser.press("c");
            browser.until("document.querySelector('#foot').textContent.includes('Next lesson: Two')");
            browser.press(Keys.ENTER);
            browser.until(KNOWN + " && deskState.model.script.title === 'Two'");
            assertThat(browser.text("#link")).isEqualTo("Not done, because that lesson ended first: mark on line 1.");
            assertThat(browser.value("deskState.model.notes.length")).isEqualTo(0L);
        }
    }

    @Test
    void aKillInThePickupRoundIsOutlived() throws IOException, InterruptedException {
        try (Browser browser = new Browser()) {
            try (ChildJvm killed = read(first, second)) {
                browser.open(address(killed));
                browser.until(KNOWN + " && deskState.model.at.rolling");
                browser.press("p");
                browser.until("deskState.model.at.open === 1");
                browser.press("r");
                browser.until("deskState.model.at.round?.line === 1");
                killed.kill();
            }
            try (ChildJvm again = read(first, second)) {
                assertThat(again.readTo("goes on")).contains("in a new take");
                browser.until(KNOWN + " && deskState.model.takes.length === 2 && deskState.model.at.round?.line === 1");
                assertThat(browser.text("#take")).contains("pickup 1 of 1");
                browser.press("r");
                browser.until("!deskState.model.at.round");
                browser.until(SEEN + 2);
                browser.press("c");
                browser.until("document.querySelector('#foot').textContent.includes('End the day')");
                browser.press("q");
                assertThat(again.untilItEnds()).contains("exit status 0");
            }
        }
    }

    private ChildJvm read(String... scripts) throws IOException {
        List<String> arguments = new ArrayList<>(List.of("read"));
        arguments.addAll(List.of(scripts));
        arguments.addAll(List.of("--no-window", "--no-microphone"));
        return ChildJvm.startWith(
                Map.of(
                        "XDG_DATA_HOME", folder.resolve("data").toString(),
                        "XDG_CONFIG_HOME", folder.resolve("settings").toString()),
                Main.class,
                arguments.toArray(String[]::new));
    }

    private static String address(ChildJvm child) throws IOException {
        return child.readTo("Desk: ").substring("Desk: ".length());
    }
}
