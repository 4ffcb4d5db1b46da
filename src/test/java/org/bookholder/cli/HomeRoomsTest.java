package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
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

/** The rooms for long work, in a real browser: what a command does is begun, shown and stopped there. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class HomeRoomsTest {
    private final FakeEquipment equipment = new FakeEquipment();

    @TempDir
    private Path folder;

    @AutoClose
    private PageAtHome page;

    private Browser browser;

    @BeforeEach
    void open() throws Exception {
        Browser.needed();
        Path course = Files.createDirectories(folder.resolve("user/films/wheels"));
        Files.writeString(course.resolve("course.yaml"), "title: A course\n");
        Path lesson = Files.writeString(course.resolve("lesson-1.md"), StoredExamples.script("One wheel"));
        Files.writeString(
                course.resolve("lesson-2.md"), "---\ntitle: Two wheels\n---\nA second lesson of few words.\n");
        StoredExamples.write(
                Files.createDirectories(folder.resolve("data/sessions")).resolve("2026-09-09-0900-one-wheel"),
                lesson.toString(),
                StoredExamples.script("One wheel"));
        page = PageAtHome.start(folder, equipment, Optional.of(course));
        browser = page.show();
        browser.until("homeState.course?.today && homeState.jobs");
    }

    @Test
    void runningTimesAreWorkedOutInTheBackgroundAndAreThereWhenThePageComesBack() throws IOException {
        room("time");
        browser.click("#work-begin");
        browser.until("homeState.jobs.some((job) => job.step === 'DONE')");
        assertThat(browser.text("#jobs")).contains("Running time", "wheels");
        assertThat(browser.text("#work-jobs")).contains("One wheel", "Two wheels", "words at", "No hard stretches");
        browser.lookAtEverySize("home-time");

        browser.open(String.valueOf(browser.value("location.href")));
        browser.until("document.querySelector('#work-jobs .found')");
        browser.click("#work-jobs .choices button");
        browser.until("homeState.jobs.length === 0 && !document.querySelector('#work-jobs .found')");
        assertThat(browser.errors()).isEmpty();
    }

    @Test
    void aDamagedSessionIsNamedAndRepairedByItsButton() throws IOException {
        Path journal = session().resolve("journal.db");
        String bytes = Files.readString(journal, StandardCharsets.ISO_8859_1);
        // Makes one row of the journal unreadable.
        Files.writeString(
                journal,
                bytes.replace("{\"type\":\"take-ended\"", "{\"type\":\"take_ended\""),
                StandardCharsets.ISO_8859_1);
        browser.until("document.querySelector('#damaged button')");
        assertThat(browser.text("#damaged")).contains("The notes of 2026-09-09-0900-one-wheel are damaged");
        browser.lookAtEverySize("home-damaged");
        browser.click("#damaged button");
        browser.until("homeState.jobs.some((job) => job.title === 'Repair' && job.step === 'DONE')");
        browser.until("!document.querySelector('#damaged button')");
        assertThat(session()).isDirectoryContaining("glob:**/before-repair-*");
        assertThat(browser.errors()).isEmpty();
    }

    @Test
    void aSessionIsPackedAndUnpackedAgain() throws IOException {
        room("pack");
        browser.click("#w-out");
        browser.until("document.querySelector('#folder[open] #folder-open')");
        browser.click("#folder-open");
        browser.until("!document.querySelector('#folder[open]')");
        done();
        assertThat(folder.resolve("user/2026-09-09-0900-one-wheel.zip")).exists();
        assertThat(browser.text("#work-jobs")).contains("Packed: 2026-09-09-0900-one-wheel.zip");

        room("unpack");
        choose("2026-09-09-0900-one-wheel.zip");
        done();
        assertThat(browser.text("#work-jobs")).contains("is there already, and nothing was unpacked");
        Files.move(session(), folder.resolve("data/elsewhere"));
        done();
        assertThat(session().resolve("journal.db")).exists();
        assertThat(browser.text("#work-jobs")).contains("The session is unpacked.");
    }

    @Test
    void aSessionThatIsWholeNeedsNoRepair() {
        room("repair");
        done();
        assertThat(browser.text("#work-jobs")).contains("Nothing had to be repaired in 2026-09-09-0900-one-wheel.");
    }

    @Test
    void aFormSaysBesideItsButtonWhatIsMissing() throws IOException {
        room("check");
        browser.lookAtEverySize("home-check-form");
        browser.click("#work-begin");
        browser.until("document.querySelector('#work-wrong').textContent.includes('choose an exported film first')");
        assertThat(browser.value("homeState.jobs.length")).isEqualTo(0L);
    }

    /** What a page asks for is the owner's, but a form that was made up must not reach more than the list of folders does. */
    @Test
    void aFormCannotNameFilesOutsideOfTheUsersHome() throws IOException {
        Files.writeString(folder.resolve("elsewhere.wav"), "");
        Files.createDirectories(folder.resolve("user/.ssh"));
        Files.writeString(folder.resolve("user/.ssh/key.wav"), "");
        Files.createSymbolicLink(folder.resolve("user/link.wav"), folder.resolve("elsewhere.wav"));
        for (String file :
                List.of("elsewhere.wav", "user/.ssh/key.wav", "user/link.wav", "user/../elsewhere.wav", "none.wav")) {
            assertThat(browser.awaited("import('./ask.js').then((ask) => ask.question('work', { kind: 'check',"
                            + " form: { files: ['" + folder.resolve(file)
                            + "'] } })).then((answer) => answer.trouble)"))
                    .asString()
                    .containsAnyOf("outside of your home", "there is no such file");
        }
        assertThat(browser.value("homeState.jobs.length")).isEqualTo(0L);
    }

    /** A dropped file is found where it lies by its name and size. */
    @Test
    void aFileThatCannotBeReadIsNamedAndTheOthersAreStillChecked() throws IOException {
        Path exports = Files.createDirectories(folder.resolve("user/films/wheels/exports"));
        Files.writeString(exports.resolve("lesson-2.mp4"), "no film");
        room("check");
        browser.value("(() => { const data = new DataTransfer(); data.items.add(new File(['no film'], 'lesson-2.mp4'));"
                + " document.querySelector('.work-form').dispatchEvent(new DragEvent('drop',"
                + " { dataTransfer: data, bubbles: true, cancelable: true })); })()");
        browser.until("document.querySelector('#w-files').children.length === 1");
        done();
        assertThat(browser.text("#work-jobs")).contains("0 of 1 film checked", "lesson-2.mp4");
        browser.lookAtEverySize("home-check-failed");
        browser.value("(() => { const data = new DataTransfer(); data.items.add(new File(['other'], 'lesson-2.mp4'));"
                + " document.querySelector('.work-form').dispatchEvent(new DragEvent('drop',"
                + " { dataTransfer: data, bubbles: true, cancelable: true })); })()");
        browser.until("document.querySelector('.work-field .wrong').textContent.includes('choose it by the button')");
    }

    private void theCalendarIsWritten() {
        browser.click("#calendar-file");
        browser.until("document.querySelector('#calendar-said').textContent");
        assertThat(browser.text("#calendar-said")).startsWith("recording-days.ics lies in");
        assertThat(folder.resolve("user/films/wheels/recording-days.ics"))
                .content()
                .contains("BEGIN:VEVENT");
    }

    @Test
    void recordingDaysAreClickedAndTheFilesCommentsStay() throws IOException {
        Path yaml = Files.writeString(folder.resolve("user/films/wheels/course.yaml"), "title: A course  # mine\n");
        browser.click("#rooms a[href='?view=plan']");
        browser.until("document.querySelector('#plan .month button')");
        browser.click("#plan .sources > summary");
        assertThat(browser.text("#plan .sources").replaceAll("\\s+", " "))
                .contains("You set your own under Settings.")
                .doesNotContain("bookholder limits");
        browser.click("#month-after");
        browser.click("#plan .month button:nth-of-type(9)");
        browser.until("document.querySelectorAll('#plan [aria-pressed=true]').length === 1");
        browser.value("document.querySelector('#p-recording-hours').dataset.before = 'yes'");
        browser.type("#p-recording-hours", "2.5", Keys.TAB);
        browser.until("document.querySelector('#p-recording-hours:not([data-before])')?.value === '2.5'");
        browser.until("homeState.course.today.day === 'later'");
        assertThat(yaml).content().startsWith("title: A course  # mine\n").contains("days: [", "-09]", "hours: 2.5");
        browser.type("#p-pace", "5", Keys.TAB);
        browser.until("document.querySelector('#p-pace-w').textContent.includes('words per minute')");
        browser.until("document.querySelector('#p-pace').getAttribute('aria-invalid') === 'true'"
                + " && document.activeElement.id === 'p-pace'");
        // What is typed in one field stays when the answer to another one draws the form anew.
        browser.value("(document.querySelector('#p-costs-currency').value = 'half typed')");
        browser.click("#own-hours > summary");
        browser.set("#own-hours input[type=number]", "4");
        browser.until("homeState.course.today && document.querySelector('#plan .slots').textContent.includes('10:00')");
        LiveDesk.until(() -> contains(yaml, "hours: 4}"));
        browser.until("document.querySelector('#own-hours input[type=number]').defaultValue === '4'");
        assertThat(browser.value("document.querySelector('#p-costs-currency').value"))
                .isEqualTo("half typed");
        assertThat(browser.value("document.querySelector('#p-pace').matches('[aria-invalid=true]')"))
                .as("a refused value stays marked")
                .isEqualTo(true);
        browser.click("#kinds > summary");
        browser.choose("#kind-2", "moving");
        LiveDesk.until(() -> contains(yaml, "kinds:\n  lesson-2.md: moving\n"));
        browser.click("#make-profile");
        browser.until("document.querySelector('#course-profile')");
        browser.click("#course-profile > summary");
        browser.set("#d-height", "at least 720");
        LiveDesk.until(() -> contains(yaml.resolveSibling("delivery.txt"), "height: at least 720"));
        assertThat(yaml).content().contains("delivery: delivery.txt", "title: A course  # mine");
        assertThat(browser.text("#plan .slots")).contains("10:00", "Set up", "Two wheels");
        assertThat(browser.text("#plan .weeks")).contains("Two wheels");
        theCalendarIsWritten();
        browser.lookAtEverySize("home-plan");
        browser.click("#rooms a[href='?view=gate']");
        browser.until("document.querySelector('#gate .gate-row')");
        assertThat(browser.text("#gate")).contains("Not yet", "Missing: ", "Two wheels");
        browser.lookAtEverySize("home-gate");
    }

    @Test
    void aLessonIsPutOnAnotherDayByPointerAndByKeysAndThatIsTakenBack() throws IOException {
        Path yaml = folder.resolve("user/films/wheels/course.yaml");
        LocalDate first = LocalDate.now(ZoneOffset.UTC).plusMonths(1).withDayOfMonth(9);
        Files.writeString(yaml, "title: A course  # mine\nrecording: {days: [" + first + "]}\n");
        browser.until("homeState.course.today.day === 'later'");
        browser.click("#rooms a[href='?view=plan']");
        String handle = "#day-of-lesson-2\\\\.md";
        browser.until("document.querySelector('" + handle + "')");
        browser.size(1440, 1800);
        LocalDate other = first.plusDays(7);
        browser.drag("[id='day-of-lesson-2.md']", move("x", other), move("y", other));
        browser.until("document.querySelector('#moved').textContent.includes('Two wheels is to be recorded on')");
        String chosen = "title: A course  # mine\nrecording: {days: [" + first + ", {day: " + other
                + ", lessons: [lesson-2.md]}]}\n";
        assertThat(yaml).hasContent(chosen);
        assertThat(browser.text("#plan .session-day[data-day='" + other + "']")).contains("Two wheels", "your choice");
        browser.lookAtEverySize("home-plan-moved");

        browser.until("document.querySelector('" + handle + "')");
        browser.value("document.querySelector('" + handle + "').focus()");
        browser.press(Keys.ENTER);
        browser.until("document.querySelector('#ask[open] [data-to]')");
        assertThat(browser.seriousFaults()).isEmpty();
        browser.value("document.querySelector('#ask .day-other').requestSubmit()");
        browser.until("document.querySelector('#other-day-w').textContent === 'Give a day first.'"
                + " && document.activeElement.id === 'other-day'");
        browser.enter("#ask [data-to='" + first + "']");
        LiveDesk.until(() -> contains(yaml, "{day: " + first + ", lessons: [lesson-2.md]}"));
        browser.until("document.querySelector('#plan-undo')?.textContent.startsWith('Take back: Two wheels on ')");
        browser.click("#plan-undo");
        LiveDesk.until(() -> contains(yaml, chosen));
        browser.until("document.querySelector('#moved').textContent === 'Taken back.'");
        assertThat(browser.errors()).isEmpty();
    }

    @Test
    void aLessonIsPutOnADayFromTodayAndFromTheBoard() throws IOException {
        Path yaml = folder.resolve("user/films/wheels/course.yaml");
        LocalDate first = LocalDate.now(ZoneOffset.UTC).plusMonths(1).withDayOfMonth(9);
        LocalDate other = first.plusDays(7);
        Files.writeString(yaml, "title: A course\nrecording: {days: [" + first + ", " + other + "]}\n");
        browser.until("homeState.course.today.day === 'later'");
        browser.click("#day-2");
        browser.until("document.querySelector('#ask[open] [data-to]')");
        browser.enter("#ask [data-to='" + other + "']");
        LiveDesk.until(() -> contains(yaml, "{day: " + other + ", lessons: [lesson-2.md]}"));
        browser.until("document.querySelector('#link').textContent.startsWith('Two wheels is to be recorded on ')");

        browser.click("#rooms a[href*='view=board']");
        browser.until("window.courseState && courseState() && document.querySelector('#board:not([hidden]) #day-2')");
        browser.click("#day-2");
        browser.until("document.querySelector('#ask[open] [data-to]')");
        browser.click("#ask [data-to='" + first + "']");
        LiveDesk.until(() -> contains(yaml, "{day: " + first + ", lessons: [lesson-2.md]}"));
        browser.until("document.querySelector('#link').textContent.startsWith('Two wheels is to be recorded on ')");
        assertThat(browser.seriousFaults()).isEmpty();
        assertThat(browser.errors()).isEmpty();
    }

    /** How far it is from the handle of the second lesson to a day of the calendar, in pixels. */
    private int move(String axis, LocalDate day) {
        String middle = "((e) => { const b = e.getBoundingClientRect(); return b." + axis + " + b."
                + (axis.equals("x") ? "width" : "height") + " / 2; })(document.getElementById('%s'))";
        return ((Number) browser.value("Math.round(" + middle.formatted("day-" + day) + " - "
                        + middle.formatted("day-of-lesson-2.md") + ")"))
                .intValue();
    }

    @Test
    void aBrokenCourseFileIsNamedWithItsLineInEveryRoom() throws IOException {
        Path yaml = folder.resolve("user/films/wheels/course.yaml");
        Files.writeString(yaml, "title: A course\nrecording:\n  days: [2027-02-02\n");
        browser.until("homeState.course.trouble");
        String sentence = String.valueOf(browser.value("homeState.course.trouble"));
        assertThat(sentence)
                .startsWith(yaml + ":4: course.yaml can't be read (")
                .contains("; write each setting as ");
        assertThat(browser.text("#trouble")).contains(sentence);
        browser.click("#rooms a[href='?view=gate']");
        browser.until("document.querySelector('#gate .wrong')");
        assertThat(browser.text("#gate")).contains("Finished?", sentence);
        browser.click("#rooms a[href='?view=plan']");
        browser.until("document.querySelector('#plan .wrong')");
        assertThat(browser.text("#plan")).contains(sentence);
        assertThat(browser.awaited("import('./door.js').then((door) => door.request({ do: 'open', folder: '"
                        + yaml.getParent() + "' }))"))
                .isEqualTo("Not done: " + sentence + ".");
        Files.writeString(yaml, "title: A course\n");
        browser.until("document.querySelector('#plan .month button')");
    }

    @Test
    void onANarrowScreenTheListOfPagesOpensAndCloses() throws IOException {
        browser.size(390, 844);
        browser.until("!document.querySelector('#rail').open");
        assertThat(browser.text("#here")).isEqualTo("Today");
        browser.click("#rail > summary");
        browser.until("document.querySelector('#rail').open");
        assertThat(browser.seriousFaults()).isEmpty();
        browser.click("#rooms a[href='?view=gate']");
        browser.until("!document.querySelector('#rail').open");
        assertThat(browser.text("#here")).isEqualTo("Finished?");
        assertThat(browser.value("document.activeElement === document.querySelector('#rail > summary')"))
                .isEqualTo(true);
        browser.size(1440, 900);
        browser.until("document.querySelector('#rail').open");
        assertThat(browser.text("#rooms")).contains("Today", "Scripts");
    }

    private Path session() {
        return folder.resolve("data/sessions/2026-09-09-0900-one-wheel");
    }

    /** Chooses a file of the user's home. */
    private void choose(String name) {
        browser.click("#w-files-choose");
        browser.until("document.querySelector('#folder[open] .pickable')");
        browser.click("#folder input[value$='" + name + "']");
        browser.click("#folder-open");
        browser.until("document.querySelector('#w-files').children.length === 1");
    }

    /** Begins the work of the room and waits until it has ended. */
    private void done() {
        Object before = browser.value("Math.max(0, ...homeState.jobs.map((job) => job.id))");
        browser.click("#work-begin");
        browser.until("homeState.jobs[0]?.id > " + before
                + " && !['WAITING', 'RUNNING', 'STOPPING'].includes(homeState.jobs[0].step)");
    }

    private void room(String kind) {
        if (List.of("time", "pack", "unpack", "repair").contains(kind)) {
            browser.click("#works a[href='?view=tools']");
            browser.click("#tool-" + kind);
        } else {
            browser.click("#works a[href='?view=" + kind + "']");
        }
        browser.until("document.querySelector('#work:not([hidden]) #work-begin')");
    }

    private static boolean contains(Path file, String text) {
        try {
            return Files.exists(file) && Files.readString(file).contains(text);
        } catch (IOException e) {
            return false;
        }
    }
}
