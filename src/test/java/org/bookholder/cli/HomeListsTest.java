package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.footage.ffmpeg.FootageFile;
import org.bookholder.journal.FootageNotes;
import org.bookholder.testing.Browser;
import org.bookholder.testing.FakeEquipment;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.StoredExamples;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.openqa.selenium.Keys;

/** The lists of a course on home's page in a real browser. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class HomeListsTest {
    @TempDir
    private Path folder;

    @AutoClose
    private PageAtHome page;

    private Browser browser;
    private Path course;

    @BeforeEach
    void open() throws Exception {
        Browser.needed();
        course = Files.createDirectories(folder.resolve("user/films/ropes"));
        Files.writeString(course.resolve("course.yaml"), "title: Ropes\n");
        Files.writeString(
                course.resolve("a.md"),
                "---\ntitle: A rope\n---\nTake a rope.\n\n> Hold it up to the light.\n\n![its end](end.jpg)\nSee its end.\n");
        Files.writeString(course.resolve("b.md"), StoredExamples.script("A bend"));
        Path session = Files.createDirectories(folder.resolve("data/sessions")).resolve("2026-09-01-0900-a-bend");
        StoredExamples.write(session, course.resolve("b.md").toString(), StoredExamples.script("A bend"));
        Path film = Ffmpeg.make(
                folder.resolve("camera.mp4"),
                "-f",
                "lavfi",
                "-i",
                "testsrc2=size=1280x720:rate=25:duration=4",
                "-preset",
                "ultrafast");
        Placement take = new Placement(1, StreamTime.ZERO, 0, 0, StreamTime.ZERO, StreamTime.ofSeconds(3), 1);
        FootageNotes.keep(session, List.of(new PlacedFootage(FootageFile.look(film), List.of(take))));
        page = PageAtHome.start(folder, new FakeEquipment(), Optional.of(course));
        browser = page.show();
        browser.until("homeState.course?.today && homeState.jobs");
    }

    @Test
    void shotsAreTickedRemarkedOnLeftOutAndAddedTo() throws IOException {
        browser.click("#rooms a[href='?view=lists']");
        browser.until("document.querySelector('#shots-0')");
        assertThat(browser.text("#lists"))
                .contains("0 of 2 done", "Hold it up to the light.", "end.jpg is missing: put it beside the script");
        browser.click("#shots-0");
        browser.until("document.querySelector('#lists-standing').textContent.startsWith('1 of 2')");
        browser.type("#shots-0-r", "by the window");
        browser.press(Keys.TAB);
        browser.until("document.querySelector('#shots-0-r').defaultValue === 'by the window'");
        assertThat(course.resolve("lists.json")).content().contains("by the window");
        browser.type("#list-text", "Its other end");
        browser.choose("#list-lesson", "A rope");
        browser.click("#list-add");
        browser.until("document.querySelector('#lists-standing').textContent.startsWith('1 of 3')");
        browser.click("#shots-2 ~ .quiet");
        browser.until("document.querySelector('#lists-out')?.textContent.includes('Its other end')");
        browser.click("#lists-out summary");
        browser.click("#lists-out button");
        browser.until("!document.querySelector('#lists-out')");
        browser.click("#lists-only");
        browser.until("!document.querySelector('#shots-0')");
        browser.click("#lists-only");
        assertThat(browser.value("document.querySelector('#shots-0-r').value")).isEqualTo("by the window");
        browser.lookAtEverySize("home-lists-shots");
        assertThat(browser.seriousFaults()).isEmpty();
        browser.pdf("home-lists-shots");
        assertThat(browser.errors()).isEmpty();
    }

    @Test
    void theSetUpShowsHowTheLastSessionLooked() throws IOException {
        browser.press("l");
        browser.until("document.querySelector('#list-set-up')");
        browser.click("#list-set-up");
        browser.until("document.querySelector('.still img')?.naturalWidth === 640");
        assertThat(browser.text("#lists"))
                .contains("As in the last session", "2 · A bend", "Battery", "MB for that, by camera.mp4");
        browser.lookAtEverySize("home-lists-set-up");
        assertThat(browser.seriousFaults()).isEmpty();
        browser.pdf("home-lists-set-up");
        assertThat(browser.errors()).isEmpty();
    }

    @Test
    void theGateNamesWhatBelongsToALaunch() throws IOException {
        browser.click("#rooms a[href='?view=gate']");
        browser.until("document.querySelector('#launch')");
        assertThat(browser.text("#gate"))
                .contains("What belongs to a launch", "Captions: lessons 1, 2", "It stops nothing.");
        browser.lookAtEverySize("home-gate-launch");
        browser.click("#gate a[href='?view=lists&list=launch']");
        browser.until("document.querySelector('.list-parts')");
        browser.click("#part-4");
        browser.until("document.querySelector('#part-4')?.checked === false");
        browser.lookAtEverySize("home-lists-launch");
        assertThat(browser.seriousFaults()).isEmpty();
        browser.pdf("home-lists-launch");
        browser.click("#rooms a[href='?view=gate']");
        browser.until(
                "document.querySelector('#launch') && !document.querySelector('#gate').innerText.includes('Captions')");
        browser.pdf("home-gate");
        assertThat(browser.errors()).isEmpty();
    }
}
