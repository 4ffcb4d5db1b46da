package org.bookholder.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.bookholder.testing.Browser;
import org.bookholder.testing.Folders;
import org.bookholder.testing.SoundServer;
import org.openqa.selenium.Keys;

/**
 * Draws the pictures of the pages that stand in README and docs: the demo's course on its recording day, its first lesson read from the
 * recording, in the time that it takes, with a producer at the desk. Look at each afterwards.
 *
 * <p>Argument: the folder for the pictures (default docs).
 */
public final class PagePictures {
    private static final Path HOME = Path.of(System.getProperty("bookholder.home", ""));
    private static final int WIDTH = 1280;
    private static final int MORNING = 10;

    private final Path user;
    private final Path pictures;
    private final SoundServer sound;
    private final Browser browser;

    private PagePictures(Path user, Path pictures, SoundServer sound, Browser browser) {
        this.user = user;
        this.pictures = pictures;
        this.sound = sound;
        this.browser = browser;
    }

    /** Draws them. */
    public static void main(String[] args) throws IOException {
        Path user = Files.createTempDirectory("bookholder-pictures");
        try (SoundServer sound = SoundServer.in(user);
                Browser browser = new Browser()) {
            PagePictures drawer = new PagePictures(user, Path.of(args.length > 0 ? args[0] : "docs"), sound, browser);
            Path course = drawer.course();
            drawer.desk(course);
            drawer.home(course);
        } finally {
            Folders.delete(user);
        }
    }

    /** The demo's course, to be recorded today. */
    private Path course() throws IOException {
        Path course = Files.createDirectories(user.resolve("a-wheel-you-can-trust"));
        for (String file : List.of("lesson-1.md", "lesson-2.md", "lesson-3.md")) {
            Files.copy(HOME.resolve("demo-scripts").resolve(file), course.resolve(file));
        }
        String yaml = Files.readString(HOME.resolve("demo-scripts/course.yaml"));
        String days = "days: [" + LocalDate.now(ZoneOffset.ofHours(hoursEast())) + "]";
        assertThat(yaml).contains("days: [2027-09-07");
        Files.writeString(course.resolve("course.yaml"), yaml.replaceFirst("days: .*]", days));
        return course;
    }

    /** The desk while the lesson is read, with what a producer has marked and written. */
    private void desk(Path course) throws IOException {
        Process reading = started(
                "read",
                course.resolve("lesson-1.md").toString(),
                "--audio",
                HOME.resolve("demo-scripts/lesson-1.wav").toString(),
                "--no-window");
        try (BufferedReader out = reading.inputReader(StandardCharsets.UTF_8)) {
            browser.size(1440, 900);
            browser.open(after(out, "Desk: "));
            browser.until("window.deskState && deskState.model.known && deskState.model.at.line >= 6");
            browser.click("[data-line='5']");
            browser.press("p");
            browser.until("deskState.model.notes.length === 1");
            browser.press("a");
            browser.press("shadow on the left cheek" + Keys.ENTER + Keys.ESCAPE);
            browser.type("#say", "chin up a little", Keys.ENTER, Keys.ESCAPE);
            browser.until(
                    "deskState.model.at.line >= 12 && document.querySelectorAll('.current .word.read').length > 5");
            browser.value("(document.activeElement.blur(), 1)");
            take("desk");
            out.transferTo(Writer.nullWriter());
        } finally {
            reading.destroy();
            reading.onExit().join();
        }
    }

    private void home(Path course) throws IOException {
        Process home = started("--no-browser", course.toString());
        try (BufferedReader out = home.inputReader(StandardCharsets.UTF_8)) {
            browser.size(WIDTH, 800);
            browser.open(after(out, "Home: "));
            browser.until("window.homeState && homeState.course?.today && homeState.before.microphones.length > 0");
            take("home");
            browser.click("#rooms a[href='?view=scripts']");
            browser.until("document.querySelector('#script-list button')");
            browser.click("#script-list li:nth-child(2) button");
            browser.until("document.querySelector('.look-row')");
            browser.value("(document.activeElement.blur(), 1)");
            take("scripts");
            browser.click("#rooms a[href*='view=pickups']");
            browser.until("window.courseState && courseState() && document.querySelector('#items .item')");
            take("desk-course");
            browser.click("#items a.item");
            browser.until("window.deskState && deskState.model.known && document.querySelector('#item-13')");
            browser.click("#item-13");
            browser.until(
                    "document.querySelector('.wave') && document.querySelector('#where').textContent === 'line 13'");
            take("desk-review");
        } finally {
            home.destroy();
            home.onExit().join();
        }
    }

    private void take(String name) throws IOException {
        browser.until("document.fonts.status === 'loaded'");
        // Read and written again, as the browser stores it quickly rather than small.
        ImageIO.write(
                ImageIO.read(browser.taken(name).toFile()),
                "png",
                pictures.resolve(name + ".png").toFile());
    }

    /** How far east of Greenwich it is in the middle of the morning now, from -12 to 11 hours: so whenever pictures are drawn. */
    private static int hoursEast() {
        int hours = MORNING - LocalTime.now(ZoneOffset.UTC).getHour();
        return hours < -12 ? hours + 24 : hours;
    }

    private static String after(BufferedReader out, String mark) throws IOException {
        for (String line = out.readLine(); line != null; line = out.readLine()) {
            if (line.startsWith(mark)) {
                return line.substring(mark.length());
            }
        }
        throw new IOException("the program ended before it said " + mark);
    }

    private Process started(String... arguments) throws IOException {
        List<String> command = new ArrayList<>(Commands.program());
        command.addAll(List.of(arguments));
        ProcessBuilder builder = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT);
        builder.environment().putAll(sound.environment());
        builder.environment().put("HOME", user.toString());
        // These names count to the west.
        builder.environment().put("TZ", "Etc/GMT" + (hoursEast() >= 0 ? "-" : "+") + Math.abs(hoursEast()));
        builder.environment().put("XDG_DATA_HOME", user.resolve("data").toString());
        builder.environment().put("XDG_CONFIG_HOME", user.resolve("settings").toString());
        return builder.start();
    }
}
