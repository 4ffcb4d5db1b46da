package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.desk.SessionDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.desk.LiveHistory;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.record.FaultLog;
import org.bookholder.runtime.record.Tapes;
import org.bookholder.runtime.source.Sources;
import org.bookholder.runtime.take.Conduct;
import org.bookholder.runtime.take.ReadingPlan;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.session.Command;
import org.bookholder.session.Mover;
import org.bookholder.session.Session;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.speech.AudioSource;
import org.bookholder.testing.Browser;
import org.bookholder.testing.StoredExamples;
import picocli.CommandLine;

/** A rolling take without a voice, moved by hand, with its desk; everything on a page can be tested except sound. */
final class LiveDesk implements AutoCloseable {
    /** The page shows the take that is rolling. */
    static final String ROLLING = "window.deskState && deskState.model.known && deskState.model.at.rolling";

    private static final long PATIENCE_NANOS = 120_000_000_000L;

    private final SessionFolder folder;
    private final Reading reading;
    private final SessionDesk session;
    private final RunningDesk desk;

    private final List<Browser> browsers = new ArrayList<>();

    /** The state that pages are shown instead of the current one; null if they are shown the current one. */
    private final AtomicReference<SessionState> frozen;

    private LiveDesk(
            SessionFolder folder,
            Reading reading,
            SessionDesk session,
            RunningDesk desk,
            AtomicReference<SessionState> frozen) {
        this.frozen = frozen;
        this.folder = folder;
        this.reading = reading;
        this.session = session;
        this.desk = desk;
    }

    /**
     * Begins a take.
     *
     * @param lines how many lines the script has
     * @param arguments options of the desk
     */
    static LiveDesk open(Path place, int lines, String... arguments) throws ProblemException {
        Environment here = StoredExamples.here(place);
        ScriptFile lesson = lesson(lines);
        DeskOptions options = new DeskOptions();
        new CommandLine(options).parseArgs(arguments);
        SessionFolder folder = SessionFolder.create(place.resolve("session"), new SessionLocks());
        Reading reading = Reading.start(plan(lesson, folder));
        AtomicReference<SessionState> frozen = new AtomicReference<>();
        SessionDesk session = SessionDesk.of(
                here,
                folder,
                LiveHistory.NONE,
                () -> Optional.ofNullable(frozen.get()).orElseGet(reading.state()),
                reading::ask,
                reading,
                true);
        RunningDesk desk = RunningDesk.of(here, options.request(), folder.path(), SessionDirectory.of(session.place()));
        return new LiveDesk(folder, reading, session, desk, frozen);
    }

    private static ScriptFile lesson(int lines) throws ProblemException {
        String text = IntStream.rangeClosed(1, lines)
                .mapToObj(n -> "Spoke number " + n + " goes through the hub and up to the rim.")
                .collect(Collectors.joining("\n", "---\ntitle: Thirty-two spokes\n---\n", "\n"));
        return new ScriptFile(ScriptFile.parse(text, "spokes.md"), text);
    }

    private static ReadingPlan plan(ScriptFile lesson, SessionFolder folder) throws ProblemException {
        Sources silent = Sources.silent(System::nanoTime);
        AudioSource first = silent.open();
        SessionState before = Session.begin(lesson.script(), FatigueLimits.defaults());
        return new ReadingPlan(
                ScriptPreparer.prepare(lesson.script(), word -> true),
                before,
                lesson.opened(before.now(), Instant.now()),
                Optional.empty(),
                ReadingPosition.START,
                Conduct.PLAIN,
                Optional.empty(),
                silent,
                first,
                false,
                folder.journal(),
                Tapes.in(folder),
                Optional.empty(),
                new FaultLog(text -> {}, Instant::now),
                Instant::now,
                System::nanoTime);
    }

    SessionState state() {
        return reading.state().get();
    }

    /** Does something while pages are told of nothing new: they all show the same, however quick or slow they are. */
    void whileNothingIsTold(Runnable work) {
        frozen.set(state());
        work.run();
        frozen.set(null);
    }

    void tell(Command command) {
        reading.tell(command);
    }

    /** The presenter is at a line, from 1. */
    void reads(int line) {
        tell(new TakeCommand.GoTo(new ReadingPosition(line, 1), Mover.HAND));
    }

    /** A page that shows the take that is rolling, in a browser of its own. */
    Browser page() {
        Browser browser = browser();
        show(browser, address());
        return browser;
    }

    /** A browser with a window of 1440 by 900 pixels that shows nothing yet; it is closed with the desk. */
    Browser browser() {
        Browser browser = new Browser();
        browsers.add(browser);
        browser.size(1440, 900);
        return browser;
    }

    /** Opens the desk's page by an address of it; returns when it shows the take that is rolling. */
    static void show(Browser browser, String address) {
        browser.open(address);
        browser.until(ROLLING);
    }

    /** The address to open. */
    String address() {
        return desk.address();
    }

    /** How many pages the program believes to be there. */
    int listening() {
        return session.place().feed().listening();
    }

    /** Waits until something has happened. */
    static void until(BooleanSupplier condition) {
        long end = System.nanoTime() + PATIENCE_NANOS;
        while (!condition.getAsBoolean()) {
            assertThat(System.nanoTime() - end).as("nanoseconds past patience").isNegative();
            LockSupport.parkNanos(20_000_000);
        }
    }

    /** The program ends; pages stay open. */
    void end() {
        desk.close();
        session.close();
        reading.close();
        folder.close();
    }

    @Override
    public void close() {
        browsers.forEach(Browser::close);
        end();
    }
}
