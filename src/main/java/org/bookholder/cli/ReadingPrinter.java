package org.bookholder.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Progress;
import org.bookholder.app.reading.ReadingListener;
import org.bookholder.app.reading.ReadingResult;
import org.bookholder.app.reading.ReadingSetup;
import org.bookholder.app.session.SessionSettler;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.session.LineCounts;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.session.Trouble;
import org.bookholder.session.Troubles;
import org.bookholder.wording.TroubleText;

/** Prints the progress and the result of a reading. Confined to the command's thread. */
final class ReadingPrinter implements ReadingListener {
    private final Environment here;
    private final Terminal terminal;
    private final boolean verbose;
    private LineProgress lines;
    private Optional<ProgressBar> recovery = Optional.empty();
    private final String readOn;
    private String interrupted = "no session was begun";

    /** Creates the printer of a reading, which prints more if {@code verbose}. */
    ReadingPrinter(Environment here, Terminal terminal, boolean verbose) {
        this(here, terminal, verbose, "give the same command with");
    }

    /** Creates the printer of footage that is followed: what is missing is read by another command. */
    static ReadingPrinter ofFootage(Environment here, Terminal terminal, Path script) {
        return new ReadingPrinter(here, terminal, false, "run bookholder read " + script);
    }

    private ReadingPrinter(Environment here, Terminal terminal, boolean verbose, String readOn) {
        this.readOn = readOn;
        this.here = here;
        this.terminal = terminal;
        this.verbose = verbose;
        this.lines = new LineProgress(terminal.out());
    }

    /** The message if the reading is interrupted now, before it has begun. */
    String interrupted() {
        endRecovery();
        return interrupted;
    }

    @Override
    public void prepared(ReadingSetup setup) {
        lines = new LineProgress(terminal.out());
        terminal.out()
                .println(setup.source().map(name -> "Listening to " + name).orElse("Listening to nothing"));
        noted("Sample rate: " + setup.rate() + " Hz");
        noted("Speech model: " + setup.model());
        noted("The script has " + setup.script().lines().size() + " lines and "
                + setup.script().spokenWords() + " words as spoken");
        UnknownWords.print(setup.prepared(), setup.source().isPresent(), terminal);
    }

    @Override
    public void opened(Path session, boolean continued) {
        if (continued) {
            terminal.out()
                    .println("The session that was broken off goes on in a new take; --new-session begins another.");
        }
        terminal.out().println("Session: " + session);
    }

    @Override
    public void leftAside(Path brokenOff) {
        terminal.warn(
                "this is a new session; " + brokenOff
                        + " of this lesson was broken off and stays as it is; to go on with that one, end this one and name it with --session");
    }

    @Override
    public void goesOnFrom(SessionState before) {
        lines.known(before);
    }

    @Override
    public void room(String sentence) {
        terminal.out().println(sentence);
    }

    @Override
    public void recovering(List<Integer> takes) {
        interrupted = Recovery.INTERRUPTED;
        terminal.warn(SessionSettler.announcement(takes));
        recovery = Optional.of(new ProgressBar(terminal.err(), Terminal.console(), here.nanoTime()));
    }

    @Override
    public void progress(Progress progress) {
        recovery.ifPresent(bar -> bar.show(progress));
    }

    @Override
    public void deskOpened(RunningDesk desk) {
        endRecovery();
        DeskOutput.print(desk, terminal);
    }

    @Override
    public void stateChanged(SessionState state, boolean over) {
        endRecovery();
        lines.show(state, over);
    }

    @Override
    public void troublesChanged(Troubles troubles) {
        boolean windowLost = troubles.all().stream().anyMatch(trouble -> trouble.kind() == Trouble.Kind.WINDOW_LOST);
        terminal.warn(
                troubles.isEmpty()
                        ? "all is well again"
                        : TroubleText.of(troubles) + (windowLost ? " Press Enter to end it." : ""));
    }

    @Override
    public void stillListening(double seconds) {
        terminal.out().printf(Locale.ROOT, "Still listening to the last %.0f s...%n", seconds);
    }

    @Override
    public void warned(String sentence) {
        endRecovery();
        terminal.warn(sentence);
    }

    @Override
    public void noted(String sentence) {
        if (verbose) {
            terminal.out().println(sentence);
        }
    }

    private void endRecovery() {
        recovery.ifPresent(ProgressBar::close);
        recovery = Optional.empty();
    }

    /** Prints the list of pickups and any problems; returns the exit status. */
    int finished(ReadingResult result) {
        endRecovery();
        try {
            Installed.exporters().get(0).write(result.state(), List.of(), terminal.out());
        } catch (IOException e) {
            terminal.warn("the list could not be printed: " + e.getMessage());
        }
        terminal.out().println();
        int toCome = LineCounts.of(result.state().lines().all()).notReached();
        if (toCome > 0) {
            int next = result.state().lines().all().stream()
                    .filter(notes -> !notes.reached())
                    .mapToInt(LineNotes::line)
                    .findFirst()
                    .orElse(1);
            terminal.out()
                    .println("To read the other " + (toCome == 1 ? "line" : toCome + " lines") + ", " + readOn
                            + " --from " + next + " --session " + result.session());
        }
        terminal.out().println("To see this list again: bookholder notes " + result.session());
        terminal.out().println("To hear each attempt and decide: bookholder desk " + result.session());
        terminal.out().flush();
        return status(result);
    }

    private int status(ReadingResult result) {
        if (result.unheard().ticks() > 0) {
            terminal.warn(String.format(
                    Locale.ROOT,
                    "%.1f s were not followed live, this machine being too busy; close other programs",
                    result.unheard().seconds()));
        }
        if (!result.unsaved().isEmpty()) {
            terminal.warn(result.session() + ": " + result.unsaved() + "; keep the list above");
        }
        result.elsewhere()
                .ifPresent(kept -> terminal.warn(kept.sentence() + "; when there is room again, run: bookholder notes "
                        + result.session() + " (it takes them in)"));
        if (result.fault().isPresent()) {
            print(result.fault().get(), result);
            return Main.OUR_FAULT;
        }
        if (result.partFailed()) {
            terminal.warn("a part of the program failed and the session went on; " + result.log() + " says more");
        }
        return result.unsaved().isEmpty() && result.elsewhere().isEmpty() ? 0 : Main.NOT_OUR_FAULT;
    }

    private void print(StageFault fault, ReadingResult result) {
        if (result.unwrittenLog().isEmpty()) {
            terminal.warn("a fault of the program ended the session; what was read is kept, and " + result.log()
                    + " says more");
        } else {
            terminal.warn("a fault of the program ended the session in the stage '" + fault.role() + "'");
            result.unwrittenLog().forEach(terminal.err()::print);
        }
    }
}
