package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import org.bookholder.testing.Browser;
import org.bookholder.testing.FakeEquipment;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.openqa.selenium.Keys;

/** Modules of a course and facts that are due, on home's pages in a real browser. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class HomeModulesTest {
    @TempDir
    private Path folder;

    @AutoClose
    private PageAtHome page;

    private Browser browser;
    private Path yaml;

    @BeforeEach
    void open() throws Exception {
        Browser.needed();
        Path course = Files.createDirectories(folder.resolve("user/films/ropes"));
        yaml = Files.writeString(course.resolve("course.yaml"), "title: Ropes  # mine\n");
        Files.writeString(course.resolve("a.md"), "---\ntitle: A rope\n---\nTake a rope of [9 mm](check:2020-01).\n");
        Files.writeString(course.resolve("b.md"), "---\ntitle: A bend\n---\nLay one over the other.\n");
        Files.writeString(course.resolve("c.md"), "---\ntitle: A hitch\n---\nLay it around the post.\n");
        page = PageAtHome.start(folder, new FakeEquipment(), Optional.of(course));
        browser = page.show();
        browser.until("homeState.course?.today && homeState.jobs");
    }

    @Test
    void modulesAreMadeAndNamedAndLessonsMovedBetweenThemOnThePlansPage() throws IOException {
        browser.click("#rooms a[href='?view=plan']");
        browser.until("document.querySelector('#modules summary')");
        browser.click("#modules summary");
        add("Ropes");
        browser.until("document.querySelector('#module-1')");
        add("Knots");
        browser.until("document.querySelector('#module-2')");
        add("ropes");
        browser.until("document.querySelector('#new-module-w').textContent.includes('another module has this title')"
                + " && document.querySelector('#new-module').value === 'ropes'");

        browser.choose("[id='module-of-b.md']", "2");
        browser.until("document.querySelector('#moved button')?.textContent.includes('where A bend stands')");
        browser.choose("[id='module-of-c.md']", "2");
        LiveDesk.until(() -> ends("lessons:\n      - b.md\n      - c.md\n"));
        browser.until("document.querySelector('[id=\"up-c.md\"]')?.disabled === false");
        browser.click("[id='up-c.md']");
        LiveDesk.until(() -> ends("lessons:\n      - c.md\n      - b.md\n"));
        assertThat(yaml).content().startsWith("title: Ropes  # mine\nlessons:\n  - a.md\nmodules:\n  - title: Ropes\n");
        browser.lookAtEverySize("home-modules");
        assertThat(browser.seriousFaults()).isEmpty();

        browser.click("#plan-undo");
        LiveDesk.until(() -> ends("lessons:\n      - b.md\n      - c.md\n"));
        browser.click("#rooms a[href='./']");
        browser.until("document.querySelector('#order .of-module')?.textContent === 'Module 2: Knots'");
        browser.lookAtEverySize("home-today-modules");
        assertThat(browser.errors()).as("the title that was refused").allMatch(error -> error.contains("409"));
    }

    @Test
    void aMoveThatCannotBeMadeIsToldAndTakenBack() throws IOException {
        browser.click("#rooms a[href='?view=plan']");
        browser.until("document.querySelector('#modules summary')");
        browser.click("#modules summary");
        add("Knots");
        browser.until("document.querySelector('[id=\"module-of-b.md\"]')");
        String whole = Files.readString(yaml);
        Files.writeString(yaml, whole + "lessons: [\n");
        browser.choose("[id='module-of-b.md']", "1");
        browser.until("document.querySelector('[id=\"move-b.md-w\"]').textContent.includes('course.yaml')");
        assertThat(browser.value("document.querySelector('[id=\"module-of-b.md\"]').value"))
                .isEqualTo("0");
        assertThat(Files.readString(yaml)).isEqualTo(whole + "lessons: [\n");
    }

    private boolean ends(String text) {
        try {
            return Files.readString(yaml).endsWith(text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void add(String title) {
        browser.until("document.querySelector('#new-module')");
        browser.type("#new-module", title);
        browser.press(Keys.ENTER);
    }

    @Test
    void aDayOnWhichNothingWasRecordedIsSaidTodayAndInThePlan() throws IOException {
        LocalDate lost = LocalDate.now(ZoneOffset.UTC).minusDays(1);
        LocalDate next = LocalDate.now(ZoneOffset.UTC).plusDays(7);
        Files.writeString(
                yaml,
                "lessons: [a.md, {script: b.md, kind: slides}, c.md]\nrecording: {days: [" + lost + ", " + next
                        + "]}\n");
        browser.until("document.querySelector('#lost')?.textContent.startsWith('Nothing was recorded on ')");
        assertThat(browser.seriousFaults()).isEmpty();
        browser.click("#lost a");
        browser.until("document.querySelector('#since-shown')?.textContent.includes('A rope: ')");
        assertThat(browser.text("#plan .session-day"))
                .contains("With the presenter alone", "With half of it slides or stills");
        browser.lookAtEverySize("home-plan-lost");
        assertThat(browser.errors()).isEmpty();
    }

    @Test
    void aNarrowScreenOpensTheNextSessionOnly() throws IOException {
        LocalDate first = LocalDate.now(ZoneOffset.UTC).plusDays(7);
        LocalDate second = first.plusDays(7);
        Files.writeString(
                yaml,
                "lessons: [a.md, b.md, c.md]\nrecording: {days: [{day: " + first + ", lessons: [a.md]}, {day: " + second
                        + ", lessons: [b.md, c.md]}]}\n");
        browser.until("homeState.course.today.day === 'later'");
        browser.size(390, 844);
        browser.value("document.querySelector(\"#rooms a[href='?view=plan']\").click()");
        String open = "[...document.querySelectorAll('#plan .session-day')].map((session) => session.open).join()";
        browser.until(open + " === 'true,false'");
        browser.click("#plan .session-day[data-day='" + second + "'] > summary");
        browser.until(open + " === 'true,true'");
        browser.wholePicture("home-plan-narrow");
        assertThat(browser.errors()).isEmpty();
    }

    @Test
    void aDueFactIsNamedAtTheGateUntilSomebodyLookedAtIt() throws IOException {
        browser.click("#rooms a[href='?view=gate']");
        browser.until("document.querySelector('#gate .facts')");
        assertThat(browser.text("#gate"))
                .contains(
                        "1 fact may be outdated and needs a look.",
                        "A rope, line 1",
                        "Take a rope of 9 mm.",
                        "Not exported yet.");
        browser.lookAtEverySize("home-gate-fact");
        assertThat(browser.seriousFaults()).isEmpty();
        browser.click("#right-1-1");
        browser.until("document.querySelector('#looked-at') && !document.querySelector('#right-1-1')");
        assertThat(yaml.resolveSibling("facts.json")).content().contains("9 mm", "\"right\" : true");
        browser.click("#looked-at summary");
        browser.click("#back-1-1");
        browser.until("document.querySelector('#right-1-1')");
        assertThat(browser.errors()).isEmpty();
    }
}
