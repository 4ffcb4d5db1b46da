package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.bookholder.app.home.HomeService;
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

/** All pages of the program with a course of real size: what anybody can see and reach on them, at every width and in all colours. */
@Timeout(value = 900, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class EveryPageTest {
    private static final int LESSONS = 24;
    private static final int RECORDED = 9;

    private static final List<String> TITLES = List.of(
            "Reading a bent wheel",
            "Bringing it back to true",
            "Why the far side of a rear wheel is always the slack one, and what to do about it",
            "Spoke nipples",
            "Measuring tension by ear and by gauge");

    /** The pages of home, and those of the course's own desk. */
    private static final List<String> PAGES = List.of(
            "today",
            "scripts",
            "plan",
            "lists",
            "papers",
            "gate",
            "day",
            "before-room",
            "settings",
            "tools",
            "film",
            "handoff",
            "match",
            "log",
            "check",
            "time",
            "pack",
            "unpack",
            "repair",
            "new",
            "board",
            "pickups",
            "sessions");

    /** The pages on which something is done that a command does, too. */
    private static final Set<String> VIEWS = Arrays.stream(HomeService.values())
            .map(service -> service.where().replaceFirst("^\\./$", "today").replaceFirst(".*view=", ""))
            .collect(Collectors.toSet());

    private static final List<String> DESK = List.of("board", "pickups", "sessions");

    /** Buttons of which the system, with colours of its own, hides the text behind a plate of the text's colour. */
    private static final String PLATED = "[...document.querySelectorAll('button, a.button')].filter((one) => {"
            + " const style = getComputedStyle(one); return style.forcedColorAdjust !== 'none'"
            + " && style.backgroundColor === getComputedStyle(document.body).color; }).map((one) => one.textContent)";

    /** What can be pressed or filled in and sticks out of the window at a side, or is hidden by the thing it lies in. */
    private static final String OUT_OF_SIGHT = "[...document.querySelectorAll('button, a, input, select, summary')]"
            + ".filter((one) => { const box = one.getBoundingClientRect(); return one.checkVisibility()"
            + " && box.width > 0 && (box.left < -1 || box.right > innerWidth + 1); })"
            + ".map((one) => one.outerHTML.slice(0, 120))";

    @TempDir
    private Path folder;

    @AutoClose
    private PageAtHome page;

    private Browser browser;
    private String start = "";
    private String course = "";

    @BeforeEach
    void open() throws Exception {
        Browser.needed();
        Path lessons = Files.createDirectories(folder.resolve("user/films/a wheel you can trust"));
        StringBuilder yaml = new StringBuilder("title: A wheel you can trust\nlessons:\n");
        Path sessions = Files.createDirectories(folder.resolve("data/sessions"));
        for (int number = 1; number <= LESSONS; number++) {
            String name = String.format(Locale.ROOT, "lesson-%02d.md", number);
            String script = StoredExamples.script(TITLES.get(number % TITLES.size()) + ", part " + number);
            Path file = Files.writeString(lessons.resolve(name), number == LESSONS ? "> Only a direction.\n" : script);
            yaml.append("  - ").append(name).append('\n');
            if (number <= RECORDED) {
                StoredExamples.write(
                        sessions.resolve("2026-09-0" + number + "-0900-a-lesson"), file.toString(), script);
            }
        }
        yaml.append("recording:\n  days: [2031-09-07, {day: 2031-09-09, from: 9:30, hours: 2}, 2031-09-16]\n")
                .append("editing: {from: 2031-09-20, hours a week: 4}\n")
                .append("costs: {currency: EUR, equipment: 120, hour: 25, hired lesson: 90, price: 15, kept: 85}\n");
        Files.writeString(lessons.resolve("course.yaml"), yaml);
        page = PageAtHome.start(folder, new FakeEquipment(), Optional.of(lessons));
        browser = page.show();
        browser.until("homeState.course?.today && homeState.jobs && homeState.shelf.sessions.length === " + RECORDED);
        start = String.valueOf(browser.value("location.href")).replaceFirst("\\?.*$", "");
        course = String.valueOf(browser.value("homeState.course.name"));
    }

    @Test
    void everyPageFitsAndCanBeSeenInAllColours() throws IOException {
        assertThat(PAGES).as("the pages of all services").containsAll(VIEWS);
        for (String name : PAGES) {
            browser.size(390, 844);
            browser.ordinaryColours("light");
            show(name);
            browser.dress("light");
            fits(name);
            canBeSeen(name);
        }
    }

    private void fits(String name) throws IOException {
        // 720 pixels are what is left of 1440 at 200 %.
        for (int width : new int[] {390, 720, 1024, 1920}) {
            browser.size(width, width == 390 ? 844 : width == 720 ? 450 : 1080);
            assertThat(browser.value("document.documentElement.scrollWidth <= innerWidth"))
                    .as(name + " fits in " + width + " pixels")
                    .isEqualTo(true);
            assertThat(browser.value(OUT_OF_SIGHT)).as(name + ", " + width).isEqualTo(List.of());
            browser.wholePicture("page-" + name + "-light-" + width);
        }
    }

    private void canBeSeen(String name) throws IOException {
        browser.size(1440, 900);
        for (String theme : List.of("light", "dark")) {
            browser.dress(theme);
            browser.ordinaryColours(theme);
            assertThat(theme.equals("light") ? browser.seriousFaults() : browser.faultsOfColour())
                    .as(name + ", " + theme)
                    .isEmpty();
            browser.wholePicture("page-" + name + "-" + theme + "-1440");
            browser.forcedColours(theme);
            assertThat(browser.faultsOfColour())
                    .as(name + ", " + theme + ", forced colours")
                    .isEmpty();
            assertThat(browser.value(PLATED))
                    .as(name + ", buttons in forced colours")
                    .isEqualTo(List.of());
        }
    }

    private void show(String name) {
        if (DESK.contains(name)) {
            browser.open(start + "course/" + course + "/?view=" + name);
            browser.until("window.courseState && courseState() && !document.querySelector('#" + name + "').hidden");
            return;
        }
        browser.open(start + "?view=" + name);
        browser.until("window.homeState && homeState.course?.today && homeState.shelf");
        browser.until("[...document.querySelectorAll('.middle-column > section:not([hidden])')].some((one) =>"
                + " one.id === '" + name + "' || one.id === 'work')");
        browser.until("document.querySelector('.middle-column > section:not([hidden])').innerText.trim().length > 40");
    }
}
