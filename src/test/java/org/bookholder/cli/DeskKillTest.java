package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
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

/** The program is killed in the middle of a take and started again, while a page of its desk stays open. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class DeskKillTest {
    private static final String ADDRESS = "Desk: ";
    private static final ObjectMapper JSON = new ObjectMapper();

    /** By then, in seconds, the demo's reader has said the first line and begun the second. */
    private static final int FIRST_LINES = 6;

    /** How long the second take goes on before it is killed, in seconds. */
    private static final int SECOND_TAKE = 3;

    /** The most seconds that each killed take may lose. */
    private static final int LOST = 1;

    /** An act under a name of its own. */
    private static final String MARK = "{do: 'mark', line: 1, by: 'ann', once: 'x1'}";

    @TempDir
    private Path folder;

    private String session;

    @BeforeEach
    void find() {
        Browser.needed();
        DemoReading.needed();
        session = folder.resolve("session").toString();
    }

    @Test
    void thePageOfAKilledTakeComesBackByItselfAndIsComplete() throws IOException, InterruptedException {
        try (Browser browser = new Browser()) {
            browser.size(1440, 900);
            List<JsonNode> before;
            try (ChildJvm child = DemoReading.start(session)) {
                browser.open(address(child));
                browser.until("window.deskState && deskState.model.at?.now > " + FIRST_LINES);
                browser.until("deskState.model.at.line > 1");
                mark(browser);
                child.kill();
                assertSaysThatTheConnectionIsLost(browser);
                before = attempts(browser);
            }
            try (ChildJvm child = DemoReading.start(session)) {
                address(child);
                browser.until("deskState.model.takes.length === 2 && deskState.model.at.rolling");
                browser.until("document.querySelector('#link').textContent === ''");
                browser.until("deskState.model.at.now > deskState.model.takes[1].start + " + SECOND_TAKE);
                assertThat(attempts(browser)).as("of the killed take").containsAll(before);
                child.kill();
                assertSaysThatTheConnectionIsLost(browser);
            }
            try (ChildJvm child = ChildJvm.start(Main.class, "desk", session)) {
                address(child);
                browser.until("!deskState.model.live && document.querySelector('#link').textContent === ''");
                assertShowsWhatWasKept(browser);
                child.terminate();
            }
        }
    }

    /** Marks the line. The program may be killed before its answer; then the page sends the mark once more, to the next one. */
    private static void mark(Browser browser) {
        browser.press("p");
        browser.until("deskState.model.notes.length === 1");
    }

    /** Without naming the session: the same command goes on with it, and so does the page, in mid-take and between takes. */
    @Test
    void theSameCommandAndThePageGoOnWithASessionThatWasKilled() throws IOException, InterruptedException {
        Files.writeString(
                folder.resolve("hub.md"), "---\ntitle: The hub\n---\nEvery wheel begins with its hub.\nTurn it.\n");
        Files.writeString(folder.resolve("rim.md"), "---\ntitle: The rim\n---\nEvery wheel ends with its rim.\n");
        try (Browser browser = new Browser()) {
            browser.size(1440, 900);
            try (ChildJvm child = readUnheard("hub.md")) {
                browser.open(address(child));
                browser.until("window.deskState && deskState.model.at?.rolling");
                send(browser, MARK);
                child.kill();
                assertSaysThatTheConnectionIsLost(browser);
            }
            try (ChildJvm child = readUnheard("hub.md")) {
                child.readTo("goes on in a new take; --new-session begins another");
                browser.until("deskState.model.takes.length === 2 && deskState.model.at.rolling");
                browser.until("document.querySelector('#link').textContent === ''");
                // A person would not cut a take at the very moment at which it appears.
                browser.until("deskState.seenTake.value() === 2");
                browser.press("c");
                browser.until("!deskState.model.at.rolling");
                child.kill();
                assertSaysThatTheConnectionIsLost(browser);
            }
            try (ChildJvm child = readUnheard("hub.md")) {
                browser.until("deskState.model.takes.length === 3 && deskState.model.at.rolling");
                // As a page does that had no answer before the kill: the mark is not made twice.
                send(browser, MARK);
                send(browser, MARK.replace("x1", "x2").replace("mark", "note"));
                browser.until("deskState.model.notes.some((note) => !note.pickup)");
                assertThat(browser.value("deskState.model.notes.length")).isEqualTo(2L);
                child.terminate();
            }
            // A session that ended normally is not continued, but people stay logged in.
            try (ChildJvm child = readUnheard("rim.md")) {
                browser.until("document.querySelector('#title').textContent === 'The rim'");
                browser.until("document.querySelector('#link').textContent === '' && deskState.model.at.rolling");
                assertThat(browser.value("deskState.model.takes.length")).isEqualTo(1L);
                assertThat(browser.value("deskState.model.notes.length")).isEqualTo(0L);
                child.terminate();
            }
        }
    }

    private static void send(Browser browser, String act) {
        assertThat(browser.awaited("import('./door.js').then((door) => door.request(" + act + "))"))
                .isEqualTo("");
    }

    private ChildJvm readUnheard(String script) throws IOException {
        Map<String, String> machine = Map.of("XDG_DATA_HOME", folder.toString(), "XDG_CONFIG_HOME", folder.toString());
        String lesson = folder.resolve(script).toString();
        return ChildJvm.startWith(machine, Main.class, "read", lesson, "--no-window", "--no-microphone");
    }

    private static String address(ChildJvm child) throws IOException {
        return child.readTo(ADDRESS).substring(ADDRESS.length());
    }

    private static void assertSaysThatTheConnectionIsLost(Browser browser) {
        browser.until("document.querySelector('#link').textContent.startsWith('Connection lost')");
    }

    private static List<JsonNode> attempts(Browser browser) throws IOException {
        String all = String.valueOf(browser.value("JSON.stringify(deskState.model.lines.flatMap(l => l.attempts))"));
        List<JsonNode> attempts = new ArrayList<>();
        JSON.readTree(all).forEach(attempts::add);
        return attempts;
    }

    /** Nothing is missing, and nothing is there twice. */
    private void assertShowsWhatWasKept(Browser browser) throws IOException {
        Program program = new Program(folder);
        assertThat(program.run("notes", session, "--json")).isZero();
        JsonNode kept = JSON.readTree(program.out());
        JsonNode shown = JSON.readTree(String.valueOf(browser.value("JSON.stringify(deskState.model)")));
        assertThat(shown.path("notes")).hasSize(1);
        // A killed take ends where its recording ends.
        double now = shown.at("/at/now").asDouble();
        assertThat(bounds(shown.path("takes"), now)).isEqualTo(bounds(kept.path("takes"), Double.NaN));
        assertThat(shown.path("lines")).hasSameSizeAs(kept.path("lines"));
        for (int i = 0; i < kept.path("lines").size(); i++) {
            JsonNode line = shown.path("lines").get(i);
            JsonNode known = kept.path("lines").get(i);
            assertThat(line.path("outcome")).as("line " + (i + 1)).isEqualTo(known.path("outcome"));
            assertThat(bounds(line.path("attempts"), Double.NaN))
                    .as("line " + (i + 1))
                    .isEqualTo(bounds(known.path("attempts"), Double.NaN));
        }
        List<Integer> seconds = new ArrayList<>();
        shown.path("points").forEach(point -> seconds.add(point.get(0).asInt()));
        assertThat(seconds)
                .hasSizeGreaterThanOrEqualTo(FIRST_LINES + SECOND_TAKE - 2 * LOST)
                .doesNotHaveDuplicates()
                .isSorted();
    }

    private static List<String> bounds(JsonNode list, double endOfTheLast) {
        List<String> bounds = new ArrayList<>();
        list.forEach(one -> bounds.add(one.path("take") + " "
                + one.path("start").asDouble() + " " + one.path("end").asDouble(endOfTheLast)));
        return bounds;
    }
}
