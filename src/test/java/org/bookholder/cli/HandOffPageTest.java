package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.bookholder.app.desk.DeskRequest;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.review.ReviewSession;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Browser;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** A kept session on the page, in a real browser: the order of its list, bounds, and the editor's files. */
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class HandOffPageTest {
    @TempDir
    private Path folder;

    private Path session;
    private ReviewSession review;
    private RunningDesk desk;
    private Browser browser;

    @BeforeEach
    void open() throws ProblemException {
        Browser.needed();
        session = folder.resolve("session");
        StoredExamples.write(session, "lesson.md");
        Environment here = StoredExamples.here(folder);
        review = ReviewSession.of(here, session);
        desk = RunningDesk.of(here, DeskRequest.usual(), session, SessionDirectory.of(review.place()));
        browser = new Browser();
        browser.size(1440, 900);
        browser.open(desk.address());
        browser.until("window.deskState && deskState.model.known");
    }

    @AfterEach
    void close() {
        if (browser != null) {
            browser.close();
            desk.close();
            review.close();
        }
    }

    @Test
    void theListCanBeSortedByCertainty() {
        assertThat(listed()).isEqualTo(List.of("item-2", "item-3", "item-4", "item-5"));
        browser.choose("#f-order", "sure");
        browser.until("document.querySelector('#items .item').id === 'item-3'");
        assertThat(listed()).isEqualTo(List.of("item-3", "item-4", "item-5", "item-2"));
    }

    @Test
    void theNextVoiceRestIsShownInMinutes() {
        assertThat(browser.awaited("import(new URL('figures.js', location.href)).then(m => [5, 0, -3].map(left => {"
                        + " deskState.model.tired.advice = [{ reason: 'VOICE', urgency: 'NONE', left }];"
                        + " m.showTired(); return"
                        + " document.querySelector('#clocks').textContent.match(/rest your"
                        + " voice[^.]*/)[0]; }))"))
                .isEqualTo(List.of(
                        "rest your voice in 5 min", "rest your voice now", "rest your voice now (3 min overdue)"));
    }

    @Test
    void aBoundIsDraggedAndUndone() {
        browser.until("document.querySelector('.wave path').getAttribute('d').length > 100");
        double before = bound();
        browser.drag("#bound-start", 30);
        browser.until("Object.keys(deskState.model.people.undo).length === 1");
        double after = bound();
        assertThat(after).isGreaterThan(before);
        assertThat(review.state().get().lines().notes(2).attempts())
                .anySatisfy(a -> assertThat(a.start().seconds()).isCloseTo(after, within(0.001)));
        browser.press("u");
        browser.until("Object.keys(deskState.model.people.undo).length === 0");
        assertThat(bound()).isEqualTo(before);
    }

    /** Where the first line's attempt that is shown begins, in seconds. */
    private double bound() {
        return ((Number) browser.value("(([t, o]) => deskState.model.lines[1].attempts.find(a => a.take === t"
                        + " && a.ordinal === o).start)(deskState.model.lines[1].best)"))
                .doubleValue();
    }

    private Object listed() {
        return browser.value("[...document.querySelectorAll('#items .item')].map(i => i.id)");
    }

    @Test
    void theFilesAreWrittenListedAndSentAndNotReplacedUnasked() throws IOException {
        browser.press("w");
        browser.until("document.querySelector('#handoff').open");
        browser.click("#write");
        browser.until("deskState.model.handoff.step === 'WRITTEN'");
        assertThat(browser.text("#handoff")).contains(session.resolve("handoff").toString(), "Written: 2 clips");
        List<String> written = names(session.resolve("handoff"));
        assertThat(written).contains("a-lesson.edl", "a-lesson.otio", "a-lesson-log.csv", "a-lesson-take-001.wav");
        assertThat(browser.value("[...document.querySelectorAll('.files a')].map(a => a.textContent)"))
                .isEqualTo(written);
        assertThat(written).as("what the command writes").isEqualTo(namesByCommand());
        assertThat(browser.awaited("fetch(document.querySelector('.files a[download$=\".edl\"]').href)"
                        + ".then(answer => answer.text())"))
                .isEqualTo(Files.readString(session.resolve("handoff/a-lesson.edl")));
        browser.lookAtEverySize("handoff");

        Files.writeString(session.resolve("handoff/a-lesson.edl"), "cut by hand");
        browser.click("#write");
        browser.until("deskState.model.handoff.step === 'IN_THE_WAY'");
        assertThat(browser.text("#handoff")).contains("Nothing was written, because there are files already.");
        assertThat(session.resolve("handoff/a-lesson.edl")).hasContent("cut by hand");
        browser.click("#replace");
        browser.until("deskState.model.handoff.step === 'WRITTEN'");
        assertThat(session.resolve("handoff/a-lesson.edl")).content().startsWith("TITLE: A lesson");
    }

    @Test
    void problemsAreShownInOneLine() throws IOException {
        Files.writeString(session.resolve("handoff"), "a file where the folder should be");
        browser.press("w");
        browser.click("#write");
        browser.until("deskState.model.handoff.step === 'FAILED'");
        assertThat(browser.text("#handoff .wrong")).startsWith("Not written: the hand-off cannot be written");
        assertThat(browser.value("document.querySelector('#write').disabled")).isEqualTo(false);
    }

    private List<String> namesByCommand() throws IOException {
        Program program = new Program(folder);
        String out = program.path("by-command");
        assertThat(program.run("handoff", session.toString(), "--out", out)).isZero();
        return names(Path.of(out));
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(f -> f.getFileName().toString()).sorted().toList();
        }
    }
}
