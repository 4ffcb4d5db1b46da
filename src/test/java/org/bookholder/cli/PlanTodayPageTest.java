package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
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

/** What the pages say of today, in a real browser. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class PlanTodayPageTest {
    @TempDir
    private Path folder;

    private Path course;

    @AutoClose
    private PageAtHome page;

    private Browser browser;

    @BeforeEach
    void open() throws Exception {
        Browser.needed();
        course = Files.createDirectories(folder.resolve("user/films/wheels"));
        Files.writeString(course.resolve("course.yaml"), "title: A course\n");
        Files.writeString(course.resolve("lesson-1.md"), "---\ntitle: One wheel\n---\nA first lesson of few words.\n");
        Files.writeString(
                course.resolve("lesson-2.md"),
                "---\ntitle: Two wheels\n---\nA second lesson. It costs [$12](check:2026-01) in any shop.\n");
        page = PageAtHome.start(folder, new FakeEquipment(), Optional.of(course));
        browser = page.show();
        browser.until("homeState.course?.today && homeState.jobs");
    }

    @Test
    void todayIsExplainedAndWhatWasMovedByHandIsTold() throws IOException {
        Path yaml = course.resolve("course.yaml");
        LocalDate today = LocalDate.now(ZoneOffset.UTC);
        LocalDate later = today.plusDays(20);
        String text = "title: A course\nlaunch: " + today.plusDays(60) + "\nrecording: {days: [%s]}\n";
        Files.writeString(yaml, text.formatted(today + ", " + later));
        browser.until("homeState.course.today.day === 'today'");
        assertThat(browser.text("#order"))
                .contains(
                        "Look at this first",
                        "Look whether \u201c$12\u201d",
                        "Why today: Today is one of your recording days",
                        "Launch: on ");
        browser.lookAtEverySize("home-today-why");
        browser.click("#rooms a[href='?view=plan']");
        browser.until("document.querySelector('#agenda li')");
        assertThat(browser.text("#agenda"))
                .contains("Today: record ", "Two wheels", "Why: ", "Why today: ", "It is all that is left", "to spare");
        browser.lookAtEverySize("home-plan-today");

        Files.writeString(yaml, text.formatted(later));
        browser.until("homeState.course.today.moved && homeState.course.today.day === 'later'");
        browser.open(String.valueOf(browser.value("location.href")));
        browser.until("document.querySelector('#since-shown li')");
        assertThat(browser.text("#since-shown"))
                .contains("Since the plan was last shown", "is no recording day any more", "Two wheels: ");
        browser.lookAtEverySize("home-plan-since");
        browser.click("#rooms a[href='./']");
        browser.until("!document.querySelector('#today').hidden");
        assertThat(browser.text("#order")).contains("The plan has moved.");
        browser.lookAtEverySize("home-today-later");
        assertThat(browser.errors()).isEmpty();
    }

    @Test
    void daysThatAreOverDoNotMakeEverythingRecorded() throws IOException {
        LocalDate over = LocalDate.now(ZoneOffset.UTC).minusDays(9);
        Files.writeString(course.resolve("course.yaml"), "recording: {days: [" + over + "]}\n");
        browser.until("homeState.course.today.day === 'none'");
        assertThat(browser.text("#h-today")).contains("all recording days are over", "2 lessons are still to record");
        assertThat(browser.text("#order"))
                .contains("What you can do today", "Find a recording day for", "Look whether");
        assertThat(browser.errors()).isEmpty();
    }

    @Test
    void lessonsWithoutWordsAreAskedFor() throws IOException {
        for (String name : new String[] {"lesson-1.md", "lesson-2.md"}) {
            Files.writeString(course.resolve(name), "# Only an outline\n");
        }
        browser.until("homeState.course.trouble");
        browser.click("#rooms a[href='?view=plan']");
        browser.until("document.querySelector('#plan .month button')");
        assertThat(browser.text("#plan .wrong")).contains("no lesson has words to read yet; write the first one");
    }
}
