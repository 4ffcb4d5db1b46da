package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Browser;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.Needs;
import org.bookholder.testing.SoundServer;
import org.bookholder.testing.Wav;
import org.bookholder.testing.XServer;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * From a machine on which the program was never started to the question whether the course is finished: the program itself, its
 * window, a microphone, a browser, each of the test's own. Once by keys alone, once with the mouse; without a terminal, and without a path
 * typed anywhere. Only the browser's own dialog for files, which no page can reach, is answered by the test.
 */
@Execution(ExecutionMode.CONCURRENT)
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
final class FirstCourseTest {
    private static final Path PROGRAM =
            Path.of(System.getProperty("bookholder.home")).toAbsolutePath();
    private static final int RATE = 16_000;

    /** The lines of the first lesson, and where the demo's recorded reading says each: from, to, in seconds. */
    private static final String[] LINES = {
        "Hello, and welcome to the workshop.",
        "First, watch the gap between the rim and the brake pad.",
        "Look at the rim itself before you touch a tool.",
        "In the next lesson we bring it back to life, a quarter turn at a time."
    };

    private static final double[][] SPOKEN = {{0.5, 3.3}, {15.1, 18.8}, {45.3, 48.6}, {86.5, 91.4}};

    @TempDir
    private Path folder;

    private Hand hand = Hand.KEYS;

    @ParameterizedTest
    @EnumSource
    void aCourseIsMadeReadAndChecked(Hand way) throws IOException, InterruptedException, ProblemException {
        Browser.needed();
        Needs.file(PROGRAM.resolve("models/vosk-model-en-us/am/final.mdl"), "mvn compile");
        Needs.program("xdotool", "Debian package xdotool");
        try (XServer screen = XServer.start("-screen", "0", "1280x720x24");
                SoundServer sound = SoundServer.in(folder);
                ChildJvm home = start(screen, sound);
                Browser browser = new Browser()) {
            browser.size(1440, 900);
            browser.open(home.readTo("Home: ").substring("Home: ".length()));
            browser.until("window.homeState && homeState.courses");

            hand = way;
            makeTheCourse(browser);
            chooseTheMicrophone(browser, sound);
            read(browser, sound, screen);
            pickUp(browser, sound);
            writeTheHandOff(browser);
            planTheDays(browser);
            checkTheExport(browser);
            lookAtTheGate(browser);

            hand.press(browser, "#quit");
            assertThat(home.untilItEnds()).containsExactly("exit status 0");
        }
    }

    private void makeTheCourse(Browser browser) throws IOException {
        hand.room(browser, "n", "#new-course");
        browser.until("document.activeElement.id === 'new-title'");
        browser.press("Wheels");
        browser.upload(
                "#files",
                document("lesson-1", LINES),
                document("lesson-2", "Now we take the tyre off.", "It comes off by hand."),
                document("lesson-3", "At last the wheel goes back in."));
        browser.until("document.querySelectorAll('.new-lesson').length === 3");
        hand.press(browser, "#make");
        browser.until("homeState.course.today && !document.querySelector('#today').hidden");
        assertThat(course().resolve("lesson-1.md")).content().contains(LINES[3]);
    }

    private void chooseTheMicrophone(Browser browser, SoundServer sound) throws IOException, ProblemException {
        hand.room(browser, "b", "#rooms a[href='?view=before-room']");
        browser.until("document.querySelectorAll('.mic').length > 1");
        Process voice = sound.play(voice(0));
        browser.until("[...document.querySelectorAll('.mic .heard')].some((heard) => heard.textContent === 'heard')");
        voice.destroy();
        hand.nextOf(browser, "#choose-microphone");
        browser.until("homeState.before.microphone");
    }

    /** Reads the first line and the last one; two are left out. */
    private void read(Browser browser, SoundServer sound, XServer screen)
            throws IOException, InterruptedException, ProblemException {
        hand.room(browser, "1", "#rooms a[href='./']");
        hand.press(browser, "#do-next");
        browser.until("homeState.reading.rolling");
        sound.play(voice(0, 3));
        browser.until("homeState.reading.read === 2 && homeState.reading.skipped === 2");
        endTheReading(browser, screen);
        browser.until("homeState.reading.step === 'ENDED'");
        assertThat(browser.text("#came-to")).isEqualTo("2 of 4 lines read, 2 skipped; 2 to pick up.");
    }

    /** By keys in the reading window, where the first Escape asks and the second ends; with the mouse on the page. */
    private void endTheReading(Browser browser, XServer screen) throws IOException, InterruptedException {
        if (hand == Hand.MOUSE) {
            hand.press(browser, "#end-reading");
            return;
        }
        keys(screen, "search", "--sync", "--onlyvisible", "--name", "lesson-1", "windowfocus", "--sync");
        keys(screen, "key", "Escape", "key", "Escape");
    }

    private void pickUp(Browser browser, SoundServer sound) throws IOException, ProblemException {
        hand.press(browser, "#pick-up");
        browser.until("homeState.reading.rolling");
        sound.play(voice(1, 2));
        browser.until("homeState.reading.pickups === 0");
        hand.press(browser, "#end-reading");
        browser.until("homeState.reading.step === 'ENDED'");
        assertThat(browser.text("#came-to")).isEqualTo("4 of 4 lines read; nothing to pick up.");
    }

    private void writeTheHandOff(Browser browser) throws IOException {
        hand.press(browser, "#works a[href='?view=handoff']");
        work(browser);
        assertThat(browser.text("#work-jobs")).contains("Cut: ", " 0 gaps");
        try (Stream<Path> sessions = Files.list(folder.resolve("user/.local/share/bookholder/sessions"))) {
            assertThat(sessions.findFirst().orElseThrow().resolve("handoff"))
                    .isDirectoryContaining("glob:**/lesson-1.edl");
        }
    }

    private void planTheDays(Browser browser) {
        hand.room(browser, "p", "#rooms a[href='?view=plan']");
        browser.until("document.querySelector('#plan .month button')");
        hand.press(browser, "#month-after");
        hand.press(browser, "#plan .month button:nth-of-type(9)");
        browser.until("document.querySelectorAll('#plan [aria-pressed=true]').length === 1");
        browser.until("document.querySelector('#plan .slots').textContent.includes('lesson-3')");
        assertThat(course().resolve("course.yaml")).content().contains("days: [", "-09]");
    }

    /** The editor's work is done by FFmpeg's own program; the file lies where exports lie. */
    private void checkTheExport(Browser browser) throws IOException, ProblemException {
        Path exports = Files.createDirectories(course().resolve("exports"));
        Ffmpeg.make(
                exports.resolve("lesson-1.mp4"),
                "-i",
                voice(0, 1, 2, 3).toString(),
                "-f",
                "lavfi",
                "-i",
                "testsrc2=s=1920x1080:r=25",
                "-af",
                "loudnorm=I=-16:TP=-2,aresample=48000",
                "-ac",
                "2",
                "-preset",
                "ultrafast",
                "-pix_fmt",
                "yuv420p",
                "-shortest");
        hand.press(browser, "#works a[href='?view=check']");
        hand.press(browser, "#w-files-choose");
        browser.until("document.querySelector('#folder[open] .folders')");
        for (String name : new String[] {"wheels", "exports"}) {
            browser.until("[...document.querySelectorAll('#folder button')].some((one) => one.textContent === '" + name
                    + "/')");
            Object place = browser.value("1 + [...document.querySelectorAll('#folder .folders li')].findIndex((one) =>"
                    + " one.textContent === '" + name + "/')");
            hand.press(browser, "#folder .folders li:nth-child(" + place + ") button");
        }
        browser.until("document.querySelector('#folder input')");
        hand.tick(browser, "#folder input");
        hand.press(browser, "#folder-open");
        browser.until("document.querySelector('#w-files li')");
        work(browser);
        assertThat(browser.text("#work-jobs")).contains("lesson-1.mp4");
    }

    private void lookAtTheGate(Browser browser) {
        hand.room(browser, "f", "#rooms a[href='?view=gate']");
        browser.until("document.querySelectorAll('#gate .gate-row').length === 2");
        assertThat(browser.text("#gate")).contains("Not yet", "2 lessons of 3 need something", "lesson-2", "lesson-3");
    }

    /** Begins the work of the room that is open, and waits until it is done. */
    private void work(Browser browser) {
        hand.press(browser, "#work-begin");
        browser.until("homeState.jobs.some((job) => job.step === 'DONE')"
                + " && document.querySelector('#work-jobs .outcome')");
    }

    private Path course() {
        return folder.resolve("user/wheels");
    }

    private ChildJvm start(XServer screen, SoundServer sound) throws IOException {
        Path user = Files.createDirectories(folder.resolve("user"));
        return ChildJvm.startWith(
                Map.of(
                        "JAVA_TOOL_OPTIONS",
                        "-Duser.home=" + user + " -Dbookholder.home=" + PROGRAM,
                        "PULSE_SERVER",
                        sound.environment().get("PULSE_SERVER"),
                        "DISPLAY",
                        screen.display(),
                        "WAYLAND_DISPLAY",
                        "",
                        "XDG_DATA_HOME",
                        "",
                        "XDG_CONFIG_HOME",
                        "",
                        "XDG_CACHE_HOME",
                        ""),
                Main.class,
                "--no-browser");
    }

    private static void keys(XServer screen, String... arguments) throws IOException, InterruptedException {
        String[] command =
                Stream.concat(Stream.of("xdotool"), Arrays.stream(arguments)).toArray(String[]::new);
        ProcessBuilder builder = new ProcessBuilder(command).inheritIO();
        builder.environment().put("DISPLAY", screen.display());
        assertThat(builder.start().waitFor(30, TimeUnit.SECONDS)).isTrue();
    }

    private Path document(String name, String... lines) throws IOException {
        Path file = folder.resolve(name + ".docx");
        try (XWPFDocument document = new XWPFDocument();
                OutputStream out = Files.newOutputStream(file)) {
            for (String line : lines) {
                document.createParagraph().createRun().setText(line);
            }
            document.write(out);
        }
        return file;
    }

    /** The demo's voice saying lines of the first lesson, counted from 0. */
    private Path voice(int... lines) throws ProblemException {
        short[] demo = Wav.samples(PROGRAM.resolve("demo-scripts/lesson-1.wav"));
        short[] said = new short[0];
        for (int line : lines) {
            int from = (int) (SPOKEN[line][0] * RATE);
            short[] part = Arrays.copyOfRange(demo, from, (int) (SPOKEN[line][1] * RATE));
            said = Arrays.copyOf(said, said.length + part.length);
            System.arraycopy(part, 0, said, said.length - part.length, part.length);
        }
        return Wav.write(folder.resolve("voice-" + Arrays.toString(lines).replaceAll("\\D", "") + ".wav"), RATE, said);
    }
}
