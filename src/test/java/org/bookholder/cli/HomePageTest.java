package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Stream;
import org.bookholder.testing.Browser;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.FakeEars;
import org.bookholder.testing.FakeEquipment;
import org.bookholder.testing.GatedSource;
import org.bookholder.testing.Spoken;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.openqa.selenium.Keys;

/** The program's own page in a real browser, on a machine on which the program was never started. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class HomePageTest {
    private static final Path DEMO = Path.of(System.getProperty("bookholder.home"), "demo-scripts");
    private static final int RATE = 16_000;

    /** The names of today's lessons in their order. */
    private static final String ORDER =
            "homeState.course.today.order.filter((row) => row.kind === 'lesson').map((row) => row.name)";

    /** Lines 1, 2 and 4 of the demo's first lesson: one is left out. */
    private static final Spoken VOICE = new Spoken(0.5)
            .says("hello and welcome to the workshop")
            .says("today we look at one tired wheel and decide whether it deserves another year")
            .says("first watch the gap between the rim and the brake pad")
            .pauses(1);

    private final CountDownLatch presenterLeaves = new CountDownLatch(1);
    private final FakeEquipment equipment = new FakeEquipment();
    private final GatedSource microphone = new GatedSource(microphone());

    @TempDir
    private Path folder;

    @AutoClose
    private PageAtHome page;

    private Browser browser;

    @BeforeEach
    void open() throws Exception {
        Browser.needed();
        Path course = Files.createDirectories(folder.resolve("user/films/wheels"));
        try (Stream<Path> files = Files.list(DEMO)) {
            for (Path file : files.filter(f -> f.toString().matches(".*(lesson-\\d\\.md|yaml)"))
                    .toList()) {
                Files.copy(file, course.resolve(file.getFileName()));
            }
        }
        Files.writeString(course.resolve("lesson-3.md"), "> Nothing to be said.\n");
        equipment.hears(new FakeEars(VOICE.hypotheses()));
        equipment.hasMicrophone(microphone);
        equipment.hasPresenter(commands -> presents());
        page = PageAtHome.start(folder, equipment, Optional.empty());
        browser = page.show();
    }

    private static FakeAudioSource microphone() {
        return FakeAudioSource.of(RATE, VOICE.sound(RATE)).thenSilence(30);
    }

    private void presents() {
        try {
            presenterLeaves.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @AfterEach
    void leave() {
        presenterLeaves.countDown();
    }

    @Test
    void aPageThatWasOpenedBehindAnotherIsThereWhenItIsSeen() throws IOException {
        openTheCourse();
        browser.beforeThePage("let behind = true; Object.defineProperty(document, 'hidden', { get: () => behind });"
                + " window.seen = () => { behind = false;"
                + " return document.dispatchEvent(new Event('visibilitychange')); };");
        browser.open(String.valueOf(browser.value("location.href")));
        browser.until("performance.getEntriesByName(new URL('who', location.href).href).length > 0");
        assertThat(browser.value("homeState.course === undefined")).isEqualTo(true);
        browser.value("seen()");
        browser.until("homeState.course?.today");
        assertThat(browser.errors()).isEmpty();
    }

    @Test
    void aLessonIsReadWithoutATerminal() throws IOException {
        openTheCourse();
        assertThat(browser.text("#order"))
                .contains("Reading a bent wheel", "Bringing it back to true", "lesson-3.md", "Steps of each lesson");
        browser.lookAtEverySize("home-today");

        browser.press(Keys.ENTER);
        browser.until("homeState.reading.step === 'OPEN'");
        microphone.openTo(VOICE.seconds());
        browser.until("homeState.reading.read + homeState.reading.skipped >= 4");
        assertThat(browser.text("#reading")).contains("Being read now", "Reading a bent wheel");
        browser.lookAtEverySize("home-reading");
        String live = String.valueOf(browser.value("document.querySelector('#live').href"));
        browser.openTab(live);
        browser.until("window.deskState && deskState.model.known && deskState.model.live");
        presenterLeaves.countDown();
        browser.until("!deskState.model.live && !document.querySelector('#summary').hidden");
        browser.firstTab();
        browser.until("homeState.reading.step === 'ENDED'");
        assertThat(browser.text("#came-to")).contains("3 of ", "1 skipped", "1 to pick up");
        browser.until("homeState.course.today.next.begun");
        browser.lookAtEverySize("home-ended");
        browser.click("#review");
        browser.until("window.deskState && deskState.model.known && !deskState.model.live");
        browser.click("#back");
        browser.until("window.courseState && courseState()");
        browser.press("2");
        assertThat(browser.text("#items")).contains("3");
        browser.click("#home");
        browser.until("window.homeState && homeState.course?.today");
        // The browser logs the end of the take's stream as an error.
        assertThat(browser.errors()).allMatch(error -> error.contains("/events?"));
    }

    @Test
    void todaysLessonsArePutInOrder() throws IOException {
        openTheCourse();
        browser.until(ORDER + ".length === 2");
        String plan = String.valueOf(browser.value(ORDER + ".join()"));
        browser.value("(document.getElementById('move-' + " + ORDER + "[0]).focus(), 1)");
        browser.press(Keys.ARROW_DOWN);
        browser.until(
                "homeState.course.today.own && " + ORDER + ".join() === '" + plan + "'.split(',').reverse().join()");
        browser.until("document.activeElement.id === 'move-' + " + ORDER + "[1]");
        browser.press(Keys.DELETE);
        browser.until(ORDER + ".length === 1 && homeState.course.today.rest.some((row) => row.kind === 'lesson')");
        browser.lookAtEverySize("home-order");
        browser.click("#planned");
        browser.until("!homeState.course.today.own && " + ORDER + ".join() === '" + plan + "'");
        browser.drag("#todays .lesson:nth-of-type(2) .handle", 0, -140);
        browser.until(
                "homeState.course.today.own && " + ORDER + ".join() === '" + plan + "'.split(',').reverse().join()");
    }

    @Test
    void theDayIsShown() throws IOException {
        browser.press("y");
        browser.until(
                "document.querySelector('#day').textContent.includes('Nothing has been read at a microphone today.')");
        assertThat(browser.text("#day")).contains("see a clinician");
        browser.lookAtEverySize("home-day");
    }

    @Test
    void aSettingsProblemIsShownBesideIt() throws IOException {
        browser.press("2");
        browser.until("document.querySelector('#s-limits-voice')");
        browser.type("#s-limits-voice", "40", Keys.TAB);
        browser.until("document.querySelector('#s-limits-voice-w').textContent.includes('smaller number first')");
        assertThat(folder.resolve("settings/limits.txt")).doesNotExist();
        assertThat(browser.text("#groups")).contains("see a clinician", "not medical advice", "Local work rules");
        browser.lookAtEverySize("home-settings");
        assertThat(browser.text("#groups"))
                .contains("Reading without a break", "minutes", "Where the figures come from");
        browser.type("#s-limits-voice", "20", Keys.TAB);
        browser.until("document.querySelector('#s-limits-voice-w').textContent === ''");
        browser.until("homeState.settings[0].fields[0].value === '20, 35, 45'");
        assertThat(folder.resolve("settings/limits.txt")).content().contains("voice: 20, 35, 45");
        browser.click("#s-window-mirror");
        browser.until("homeState.settings[1].fields.find((f) => f.name === 'mirror').value === 'yes'");
        browser.click("#s-window-hide input[value=pace]");
        browser.until("homeState.settings[1].fields.find((f) => f.name === 'hide').value === 'pace'");
        browser.click("#g-delivery-more > summary");
        browser.set("#s-delivery-height", "at least 720");
        browser.until(
                "homeState.settings.find((g) => g.name === 'delivery').fields.find((f) => f.name === 'height').value"
                        + " === 'at least 720'");
        assertThat(folder.resolve("settings/delivery.txt"))
                .content()
                .contains("height: at least 720", "container: mp4");
        browser.type("#s-window-distance-cm", "3", Keys.TAB);
        browser.until("document.querySelector('#s-window-distance-cm-w').textContent.includes('20 to 2000 cm')");
    }

    @Test
    void itsButtonEndsTheProgramAndAsksWhileALessonIsRead() throws IOException, InterruptedException {
        openTheCourse();
        browser.press(Keys.ENTER);
        browser.until("homeState.reading.step === 'OPEN'");
        browser.click("#quit");
        browser.until("document.querySelector('#ask[open]')");
        browser.press(Keys.ENTER);
        browser.until("!document.querySelector('#ask[open]') && homeState.reading.step === 'OPEN'");
        presenterLeaves.countDown();
        browser.until("homeState.reading.step === 'ENDED'");
        browser.click("#quit");
        browser.until("document.querySelector('#ended')");
        assertThat(page.endsByItself()).isTrue();
    }

    @Test
    void theDemoIsTriedFromAnEmptyHome() throws IOException {
        Path demo = Files.createDirectories(folder.resolve("demo-scripts"));
        for (String file : new String[] {"course.yaml", "lesson-1.md", "lesson-2.md", "lesson-3.md", "lesson-1.wav"}) {
            Files.copy(DEMO.resolve(file), demo.resolve(file));
        }
        browser.lookAtEverySize("home-empty");
        browser.click("#demo");
        browser.until("homeState.reading.step === 'OPEN'");
        assertThat(browser.text("#reading")).contains("Reading a bent wheel");
        presenterLeaves.countDown();
        browser.until("homeState.reading.step === 'ENDED'");
        assertThat(browser.text("#courses")).contains("A wheel you can trust");
    }

    /** By keys alone. */
    private void openTheCourse() throws IOException {
        assertThat(browser.text("#trouble")).contains("Where are your lessons?");
        browser.press("o");
        browser.until("document.querySelector('#folder[open] .folders button')");
        browser.press(Keys.ENTER);
        browser.until("document.querySelector('#folder .path').textContent.endsWith('films')");
        browser.press(Keys.TAB);
        browser.press(Keys.ENTER);
        browser.until("document.querySelector('#folder .path').textContent.endsWith('wheels')");
        browser.lookAtEverySize("home-folder");
        browser.press(Keys.ENTER);
        browser.until("homeState.course.today && !document.querySelector('#folder[open]')");
    }
}
