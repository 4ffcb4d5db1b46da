package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.cli.LiveDesk.until;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.bookholder.app.desk.DeskRequest;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.desk.SessionDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Warnings;
import org.bookholder.app.review.ReviewSession;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.desk.LiveHistory;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.record.FaultLog;
import org.bookholder.runtime.record.ReplayedSession;
import org.bookholder.runtime.record.Tapes;
import org.bookholder.runtime.source.Sources;
import org.bookholder.runtime.stage.Helpers;
import org.bookholder.runtime.take.Conduct;
import org.bookholder.runtime.take.ReadingPlan;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.session.Decision;
import org.bookholder.session.LineNotes;
import org.bookholder.session.Note;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.Ears;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.speech.wav.WavSource;
import org.bookholder.testing.Browser;
import org.bookholder.testing.FakeEquipment;
import org.bookholder.testing.GatedSource;
import org.bookholder.testing.Needs;
import org.bookholder.wording.Labels;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.openqa.selenium.Keys;

/** A producer runs a take and its review from the page by keys alone: the demo's recording, real browser and ears. */
@Timeout(value = 300, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class DeskPageTest {
    private static final Path HOME = Path.of(System.getProperty("bookholder.home"));
    private static final Path MODEL = HOME.resolve("models/vosk-model-en-us");
    private static final Path DEMO = HOME.resolve("demo-scripts");

    /** The demo's reader has skipped a line, misread another and spoken out of turn by then. */
    private static final double HALF_WAY = 20;

    private static final double CUT_AT = 62;

    @TempDir
    private Path folder;

    @SuppressWarnings("NullAway.Init") // Begun by the test, before anything looks at it.
    private Reading reading;

    @SuppressWarnings("NullAway.Init")
    private GatedSource source;

    private Optional<OpenDesk> desk = Optional.empty();

    @Test
    void aTakeAndItsReviewAreRunFromThePage() throws Exception {
        Browser.needed();
        Needs.file(MODEL.resolve("am/final.mdl"), "mvn compile");
        Path place = folder.resolve("session");
        Environment here = new Environment(
                Instant::now,
                System::nanoTime,
                ZoneOffset.UTC,
                HOME,
                folder,
                folder,
                new SessionLocks(),
                new Warnings(line -> {}),
                new Helpers(1),
                new FakeEquipment());
        ScriptFile lesson = demo();
        try (Browser browser = new Browser()) {
            try (Ears ears = VoskEars.load(MODEL);
                    SessionFolder session = SessionFolder.create(place, new SessionLocks());
                    Reading begun = Reading.start(plan(lesson, ears, session))) {
                reading = begun;
                OpenDesk first = desk(here, session);
                browser.size(1440, 900);
                browser.open(first.desk().address());
                runTheTake(browser);
                loseTheConnection(browser, here, session, first);
                endTheTake(browser);
                reading.tell(new TakeCommand.Quit());
                until(() -> reading.await(100));
            }
            reviewAgain(browser, here, place);
            assertThat(browser.errors())
                    .filteredOn(e -> e.contains("Content Security Policy"))
                    .isEmpty();
        }
    }

    private void runTheTake(Browser browser) throws IOException {
        source.openTo(HALF_WAY);
        browser.until("document.querySelector('.row.line.current')");
        browser.until("deskState.model.at.now > " + (HALF_WAY - 1));
        browser.press("p");
        until(() -> notes().size() == 1);
        assertThat(notes().get(0).pickup()).isTrue();
        browser.press("a");
        browser.press("shadow on the left cheek");
        browser.press(Keys.ENTER);
        until(() -> notes().size() == 2);
        assertThat(notes().get(1).line()).isEqualTo(notes().get(0).line());
        browser.until("document.querySelector('#notes').textContent.includes('shadow on the left cheek')");
        browser.press("h");
        until(() -> state().takes().held());
        browser.until("document.querySelector('#take').textContent.includes('held')");
        browser.press("h");
        until(() -> !state().takes().held());
        browser.press("m");
        browser.press("chin up a little");
        browser.press(Keys.ENTER);
        until(() -> state().remarks().message().isPresent());
        browser.until("document.querySelector('#said').textContent.includes('chin up a little')");
        browser.lookAtEverySize("live");
        browser.until("document.querySelector('#live-pickups [data-hear]:not(:disabled)')");
        browser.click("#live-pickups [data-hear]:not(:disabled)");
        browser.until("performance.getEntriesByType('resource').some(r => r.name.includes('.wav?to='))");
        buttonsStay(browser);
    }

    /** An element replaced under the pointer would lose the click, so it stays while a take rolls. */
    private void buttonsStay(Browser browser) {
        browser.press("3");
        assertThat(browser.value("Boolean(window.pressed = document.querySelector('#summary button'))"))
                .isEqualTo(true);
        source.openTo(HALF_WAY + 2);
        browser.until("deskState.model.at.now > " + (HALF_WAY + 1));
        assertThat(browser.value("pressed.isConnected")).isEqualTo(true);
        browser.press("1");
    }

    /** As when the program was killed and started again: the page comes back by itself, and is complete. */
    private void loseTheConnection(Browser browser, Environment here, SessionFolder session, OpenDesk first)
            throws ProblemException, IOException {
        String place = first.desk().address().replaceFirst("#.*", "");
        first.close();
        browser.until("document.querySelector('#link').classList.contains('lost')");
        source.openTo(CUT_AT);
        until(() -> state().now().seconds() > CUT_AT - 1);
        OpenDesk second = desk(here, session);
        assertThat(second.desk().address()).startsWith(place);
        browser.until("!document.querySelector('#link').classList.contains('lost')");
        browser.until("deskState.model.at.now > " + (CUT_AT - 1));
        desk = Optional.of(second);
        until(() -> reading.progress().behind().seconds() < 2);
        browser.until("document.querySelectorAll('.row.line.clean').length > 4");
        browser.dress("light");
        browser.size(1920, 1080);
        browser.picture("live-later-light-1920");
        browser.size(1440, 900);
    }

    private void endTheTake(Browser browser) throws ProblemException {
        browser.press("c");
        until(() -> !state().takes().rolling() && reading.progress().behind().ticks() == 0);
        assertShows(browser, state());
        browser.press("z");
        until(() -> state().remarks().breakSince().isPresent());
        browser.until("!document.querySelector('#resting').hidden");
        browser.press("z");
        until(() -> state().remarks().breakSince().isEmpty());
        anotherTake(browser);
        desk.ifPresent(OpenDesk::close);
    }

    private void anotherTake(Browser browser) {
        browser.press("n");
        browser.until("deskState.model.at.rolling && deskState.model.takes.length === 2");
        int line = state().following().position().line();
        browser.press(Keys.ARROW_DOWN);
        browser.press(Keys.ARROW_DOWN);
        browser.until("document.querySelector('.row.selected').dataset.line === '" + (line + 1) + "'");
        browser.press("j");
        until(() -> state().following().position().line() == line + 1);
        browser.press(Keys.ESCAPE);
        browser.until("!document.querySelector('.row.selected')");
        // A person would not cut a take at the very moment at which it appears.
        browser.until("deskState.seenTake.value() === 2");
        browser.press("c");
        until(() -> !state().takes().rolling() && reading.progress().behind().ticks() == 0);
        assertShows(browser, state());
    }

    private void reviewAgain(Browser browser, Environment here, Path place) throws Exception {
        try (ReviewSession review = ReviewSession.of(here, place);
                RunningDesk kept =
                        RunningDesk.of(here, DeskRequest.usual(), place, SessionDirectory.of(review.place()))) {
            browser.open("about:blank");
            browser.open(kept.address());
            browser.until("window.deskState && deskState.model.known");
            assertShows(browser, review.state().get());
            decide(browser, review);
            summary(browser, review);
        }
        assertJournalLeadsTo(place);
    }

    private void decide(Browser browser, ReviewSession review) throws IOException {
        SessionState before = review.state().get();
        LineNotes misread = before.lines().pickups().stream()
                .filter(l -> !l.attempts().isEmpty())
                .findFirst()
                .orElseThrow();
        browser.until("document.querySelector('#items .item')");
        browser.press("2");
        while (!browser.value("document.querySelector('#items').getAttribute('aria-activedescendant')")
                .equals("item-" + misread.line())) {
            browser.press(Keys.ARROW_DOWN);
        }
        browser.until("document.querySelector('.wave path').getAttribute('d').length > 100");
        browser.lookAtEverySize("review");
        browser.press(" ");
        browser.until("parseFloat(document.querySelector('#playhead').style.left) > 20");
        // What a decision means for other lessons is said where a word was heard as another.
        browser.until("document.querySelector('#heard').textContent.includes(' for ')"
                + " !== document.querySelector('#teaches').hidden");
        browser.press("xu"); // before the page can know of the decision
        browser.until("document.querySelector('#said-aloud').textContent.includes('Undone: not a fault')");
        browser.press("x");
        until(() -> decision(review, misread.line()).equals(Optional.of(Decision.Choice.NOT_A_FAULT)));
        browser.until("deskState.model.lines[" + (misread.line() - 1) + "].outcome === 'clean'");
        // A marked line was clean before, so that alone does not say that the page knows of the decision.
        browser.until("document.querySelector('#undo').textContent.includes(', line " + misread.line() + "')");
        browser.press("u");
        until(() -> decision(review, misread.line()).isEmpty());
        browser.until("!deskState.model.lines[" + (misread.line() - 1) + "].decision");
        browser.press(".");
        until(() -> review.state().get().remarks().acts().standing().size() == 4);
        browser.until("document.querySelector('#undo').textContent.includes('bounds')");
        browser.press("k"); // the last: it moves on to the next line
        until(() -> review.state().get().remarks().acts().standing().size() == 5);
        assertShows(browser, review.state().get());
    }

    private void summary(Browser browser, ReviewSession review) throws IOException {
        browser.press("3");
        browser.until("document.querySelector('.sums')");
        browser.lookAtEverySize("summary");
        byte[] pdf = browser.pdf("sheet");
        try (PDDocument document = Loader.loadPDF(pdf)) {
            String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            SessionState state = review.state().get();
            for (LineNotes line : state.lines().pickups()) {
                assertThat(text).contains(state.line(line.line()).text());
            }
        }
    }

    private static Optional<Decision.Choice> decision(ReviewSession review, int line) {
        return review.state().get().lines().notes(line).decision().map(Decision::choice);
    }

    /** The page must show the session's state. */
    @SuppressWarnings("unchecked")
    private static void assertShows(Browser browser, SessionState state) {
        browser.until("deskState.model.at.open === " + state.lines().pickups().size());
        List<Map<String, Object>> shown = (List<Map<String, Object>>) browser.value("deskState.model.lines");
        assertThat(shown).hasSameSizeAs(state.lines().all());
        for (int i = 0; i < shown.size(); i++) {
            LineNotes line = state.lines().all().get(i);
            Map<String, Object> page = shown.get(i);
            assertThat(page.get("outcome")).isEqualTo(Labels.of(line.outcome()));
            assertThat(page.get("pickup")).isEqualTo(line.pickup());
            assertThat((List<Object>) page.get("attempts")).hasSameSizeAs(line.attempts());
        }
        List<String> skipped = new ArrayList<>();
        state.lines().all().stream()
                .filter(l -> l.reached() && l.attempts().isEmpty())
                .forEach(l -> skipped.add(Integer.toString(l.line())));
        assertThat((List<String>)
                        browser.value("[...document.querySelectorAll('.row.line.skipped')].map(r => r.dataset.line)"))
                .containsExactlyElementsOf(skipped);
    }

    private void assertJournalLeadsTo(Path place) throws ProblemException {
        ScriptFile lesson = demo();
        try (SessionFolder session = SessionFolder.openForReading(place)) {
            SessionState replayed = Replay.state(
                    Session.begin(lesson.script(), FatigueLimits.defaults()),
                    session.journal().events(),
                    Session::apply);
            assertThat(replayed.lines().all().stream().flatMap(l -> l.decision().stream()))
                    .extracting(Decision::choice)
                    .containsExactly(Decision.Choice.KEEP);
        }
    }

    private static ScriptFile demo() throws ProblemException {
        return ScriptFile.read(DEMO.resolve("lesson-1.md"));
    }

    private OpenDesk desk(Environment here, SessionFolder session) throws ProblemException {
        SessionDesk watching =
                SessionDesk.of(here, session, trail(session.path()), reading.state(), reading::ask, reading, true);
        RunningDesk open =
                RunningDesk.of(here, DeskRequest.usual(), session.path(), SessionDirectory.of(watching.place()));
        return new OpenDesk(watching, open);
    }

    private record OpenDesk(SessionDesk session, RunningDesk desk) implements AutoCloseable {
        @Override
        public void close() {
            desk.close();
            session.close();
        }
    }

    /** What went before, as the program finds it when it goes on with a session. */
    private static LiveHistory trail(Path place) throws ProblemException {
        try (SessionFolder read = SessionFolder.openForReading(place)) {
            return ReplayedSession.of(
                            demo().script(),
                            FatigueLimits.defaults(),
                            read.journal().events())
                    .trail();
        }
    }

    private ReadingPlan plan(ScriptFile lesson, Ears ears, SessionFolder session) throws ProblemException {
        source = new GatedSource(WavSource.open(DEMO.resolve("lesson-1.wav")));
        PreparedScript prepared = ScriptPreparer.prepare(lesson.script(), ears.vocabulary());
        SessionState before = Session.begin(lesson.script(), FatigueLimits.defaults());
        SessionEvent.Opened opened = lesson.opened(before.now(), Instant.now());
        Sources sources = new Sources() {
            @Override
            public AudioSource open() throws ProblemException {
                throw new ProblemException("there is one take only", "the test", "none");
            }

            @Override
            public boolean live() {
                return false;
            }
        };
        return new ReadingPlan(
                prepared,
                before,
                opened,
                Optional.empty(),
                ReadingPosition.START,
                Conduct.PLAIN,
                Optional.of(ears),
                sources,
                source,
                false,
                session.journal(),
                Tapes.in(session),
                Optional.empty(),
                new FaultLog(text -> {}, Instant::now),
                Instant::now,
                System::nanoTime);
    }

    private SessionState state() {
        return reading.state().get();
    }

    private List<Note> notes() {
        return state().remarks().notes();
    }
}
