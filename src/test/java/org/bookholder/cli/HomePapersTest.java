package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
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
import org.openqa.selenium.Keys;

/** Summary, quotation and versions on home's page in a real browser, and as a printer gets them. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class HomePapersTest {
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
        Files.writeString(course.resolve("a.md"), "---\ntitle: A rope\n---\nTake a rope.\n");
        Path script = Files.writeString(course.resolve("b.md"), StoredExamples.script("A bend"));
        StoredExamples.write(
                Files.createDirectories(folder.resolve("data/sessions")).resolve("2026-09-01-0900-a-bend"),
                script.toString(),
                StoredExamples.script("A bend"));
        Files.writeString(script, Files.readString(script) + "A new end.\n");
        page = PageAtHome.start(folder, new FakeEquipment(), Optional.of(course));
        browser = page.show();
        browser.until("homeState.course?.today && homeState.jobs");
        browser.click("#rooms a[href='?view=papers']");
        browser.until("document.querySelector('#papers .paper h1')");
    }

    @Test
    void aSummaryIsPrintedOnOnePageWithWordsOfOnesOwn() throws IOException {
        browser.type("#paper-words", "Dear Ada,");
        browser.press(Keys.TAB);
        browser.until("document.querySelector('#papers .own')?.textContent === 'Dear Ada,'");
        browser.lookAtEverySize("home-papers-summary");
        assertThat(browser.seriousFaults()).isEmpty();
        assertThat(printed("home-papers-summary"))
                .startsWith("Ropes")
                .contains("Dear Ada,", "0 of 2 lessons are finished", "A bend")
                .doesNotContain("Today", "Copy as text");
        assertThat(browser.errors()).isEmpty();
    }

    @Test
    void aQuotationFollowsTheRateThatIsFilledIn() throws IOException {
        browser.click("#paper-quotation");
        browser.until("document.querySelector('#q-quotation-hour')");
        browser.type("#q-quotation-currency", "EUR");
        browser.press(Keys.TAB);
        browser.until("document.querySelector('#q-quotation-currency').defaultValue === 'EUR'");
        browser.type("#q-quotation-hour", "50");
        browser.press(Keys.TAB);
        browser.until("document.querySelector('#papers .sum:last-child')?.textContent.includes('EUR')");
        assertThat(yaml).content().startsWith("title: Ropes  # mine\n").contains("hour: 50");
        browser.lookAtEverySize("home-papers-quotation");
        assertThat(browser.seriousFaults()).isEmpty();
        assertThat(printed("home-papers-quotation"))
                .startsWith("Quotation: Ropes")
                .contains("Editing", "Price", "This is no legal or tax advice");
        browser.set("#q-quotation-hour", "-2");
        browser.press(Keys.TAB);
        browser.until("document.querySelector('#q-quotation-hour-w').textContent.includes('out of range')");
        assertThat(yaml).content().contains("hour: 50");
    }

    @Test
    void theVersionsOfALessonShowWhatChanged() throws IOException {
        browser.click("#paper-versions");
        browser.until("document.querySelector('#paper-lesson')");
        browser.choose("#paper-lesson", "b");
        browser.until("document.querySelector('#papers ins')?.textContent === 'A new end.'");
        browser.lookAtEverySize("home-papers-versions");
        assertThat(browser.seriousFaults()).isEmpty();
        assertThat(printed("home-papers-versions"))
                .startsWith("Versions: A bend")
                .contains("+ A new end.");
        browser.click("#rooms a[href='?view=gate']");
        browser.until("document.querySelector('#launch')");
        assertThat(browser.value("document.querySelector('#sheet').innerHTML")).isEqualTo("");
        assertThat(browser.errors()).isEmpty();
    }

    /** The text of the page as it is printed, which must be one page. */
    private String printed(String name) throws IOException {
        try (PDDocument document = Loader.loadPDF(browser.pdf(name))) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
            return new PDFTextStripper().getText(document);
        }
    }
}
