package org.bookholder.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.InstantSource;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.ReadingPosition;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.FolderTapes;
import org.bookholder.runtime.PacedSource;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.ReadingPlan;
import org.bookholder.runtime.Resumption;
import org.bookholder.runtime.Shutdown;
import org.bookholder.runtime.Sources;
import org.bookholder.script.PreparedScript;
import org.bookholder.script.Script;
import org.bookholder.script.ScriptPreparer;
import org.bookholder.script.ScriptReader;
import org.bookholder.session.Command;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.microphone.Microphone;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.speech.wav.WavSource;
import org.bookholder.view.WindowPlace;
import org.bookholder.view.WindowSettings;
import org.bookholder.view.gl.ReadingWindow;

/** One run of the program on one lesson: puts the parts together, shows them, and prints the list at the end. */
final class LessonRun {
    private static final long LOOK_MILLIS = 100;
    private static final int UNKNOWN_SHOWN = 8;

    private final Order order;
    private final InstantSource clock = InstantSource.system();
    private final LongSupplier nanoTime = System::nanoTime;

    /** What was asked for on the command line. */
    record Order(
            Path script,
            Optional<Path> audio,
            boolean unpaced,
            boolean window,
            Optional<Path> session,
            int from,
            Optional<String> microphone,
            boolean silent,
            Path model,
            WindowSettings settings,
            WindowPlace place) {}

    LessonRun(Order order) {
        this.order = order;
    }

    /** Runs to the end of the session; returns the exit status. */
    int run() throws ProblemException, IOException {
        Script script = ScriptReader.read(order.script());
        String text = ScriptReader.text(order.script());
        Optional<ReadingWindow> window = window(script);
        try (VoskEars ears = VoskEars.load(order.model());
                SessionFolder folder = folder(script)) {
            PreparedScript prepared = ScriptPreparer.prepare(script, ears.vocabulary());
            tellUnknown(prepared);
            SessionState before = Resumption.of(folder, script, text, FatigueLimits.defaults());
            folder.keepScript(order.script().toString(), text);
            Sources sources = sources();
            AudioSource first = sources.open();
            ReadingPlan plan = new ReadingPlan(
                    prepared,
                    before,
                    new SessionEvent.Opened(
                            before.now(),
                            clock.instant(),
                            script.title(),
                            order.script().toString(),
                            text),
                    order.from() > 0 ? new ReadingPosition(order.from(), 1) : Resumption.next(before),
                    order.silent() ? Optional.empty() : Optional.of(ears),
                    sources,
                    first,
                    order.audio().isPresent() && window.isEmpty(),
                    folder.journal(),
                    new FolderTapes(folder),
                    clock,
                    nanoTime);
            return read(plan, window, folder.path());
        } finally {
            window.ifPresent(ReadingWindow::close);
        }
    }

    private Optional<ReadingWindow> window(Script script) {
        if (!order.window()) {
            return Optional.empty();
        }
        try {
            return Optional.of(ReadingWindow.open(order.settings(), script, order.place()));
        } catch (ProblemException e) {
            System.out.println("No reading window: " + e.getMessage() + ". Going on in the terminal.");
            return Optional.empty();
        }
    }

    private SessionFolder folder(Script script) throws ProblemException {
        Path path = order.session()
                .orElseGet(() -> Places.session(
                        LocalDateTime.ofInstant(clock.instant(), ZoneId.systemDefault()), script.title()));
        return SessionFolder.isSession(path) ? SessionFolder.open(path) : SessionFolder.create(path);
    }

    private Sources sources() {
        if (order.silent()) {
            return Sources.silent(nanoTime);
        }
        boolean live = !order.unpaced();
        return new Sources() {
            @Override
            public AudioSource open() throws ProblemException {
                if (order.audio().isEmpty()) {
                    return Microphone.open(order.microphone(), Microphone.PREFERRED_RATE, nanoTime);
                }
                AudioSource file = WavSource.open(order.audio().get());
                return live ? new PacedSource(file, nanoTime) : file;
            }

            @Override
            public boolean live() {
                return live;
            }
        };
    }

    private int read(ReadingPlan plan, Optional<ReadingWindow> window, Path folder)
            throws ProblemException, IOException {
        Reading reading = Reading.start(plan);
        try (Shutdown shutdown = Shutdown.onInterrupt(() -> reading.tell(new Command.Quit()))) {
            LineProgress progress = new LineProgress(System.out);
            if (window.isPresent()) {
                window.get().run(reading.state(), reading::tell, nanoTime);
            }
            while (!reading.await(LOOK_MILLIS)) {
                if (window.isEmpty()) {
                    progress.show(reading.state().get());
                }
            }
            if (shutdown.asked()) {
                System.out.println("Interrupted: the take was ended in order.");
            }
            SessionState state = reading.state().get();
            if (window.isEmpty()) {
                progress.show(state);
            }
            reading.close();
            System.out.println();
            StringBuilder list = new StringBuilder();
            NotesCommand.exporter("list").write(state, plan.journal().events(), list);
            System.out.print(list);
            System.out.println("Kept in " + folder);
            return reading.fault().map(this::report).orElse(0);
        }
    }

    private int report(Reading.Fault fault) {
        System.err.println("bookholder: a fault of the program in " + fault.role() + ": " + fault.cause());
        fault.cause().printStackTrace(System.err);
        return 1;
    }

    private static void tellUnknown(PreparedScript prepared) {
        prepared.unknown().stream()
                .limit(UNKNOWN_SHOWN)
                .map(u -> "The recogniser does not know '" + u.spoken() + "' (line " + u.line() + ")"
                        + (u.standIn().isEmpty() ? "." : "; it listens for '" + String.join(" ", u.standIn()) + "'."))
                .forEach(System.out::println);
        int more = prepared.unknown().size() - UNKNOWN_SHOWN;
        if (more > 0) {
            System.out.println("... and " + more + " more.");
        }
    }
}
