package org.bookholder.cli;

import java.util.Locale;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.runtime.EndDeadline;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.ReadingProgress;
import org.bookholder.runtime.stage.Shutdown;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.session.Troubles;
import org.bookholder.wording.TroubleText;

/** Watches a reading from the terminal until it is over: shows progress, takes Enter and Ctrl-C. Confined to one thread. */
final class Watch implements AutoCloseable {
    private static final long PERIOD_MILLIS = 100;

    private static final long NOTICE_NANOS = 2_000_000_000L;

    private final Reading reading;
    private final Terminal terminal;
    private final Environment here;
    private final Shutdown shutdown;
    private final LineProgress lines;
    private Troubles troubles = Troubles.NONE;
    private long noticed;
    private Optional<EndDeadline> deadline = Optional.empty();

    Watch(Reading reading, Terminal terminal, Environment here) {
        this.reading = reading;
        this.terminal = terminal;
        this.here = here;
        this.lines = new LineProgress(terminal.out());
        this.noticed = here.nanoTime().getAsLong();
        this.shutdown = Shutdown.onInterrupt(() -> reading.tell(new TakeCommand.Quit()));
    }

    /** Whether the program is to end now: it was interrupted, or a fault has ended the reading. */
    boolean mustEnd() {
        return shutdown.asked() || reading.fault().isPresent();
    }

    /** Returns when everything is settled, or after Ctrl-C when a part of the program does not end. */
    void untilOver(boolean showLines) {
        while (!reading.await(PERIOD_MILLIS)) {
            look(showLines);
            if (step() == EndDeadline.Step.STOP) {
                terminal.err().println("bookholder: a part of the program does not end and is stopped");
                return;
            }
        }
        look(showLines);
    }

    @Override
    public void close() {
        shutdown.close();
    }

    private void look(boolean showLines) {
        SessionState state = reading.state().get();
        if (showLines) {
            lines.show(state, reading.progress().over());
        }
        if (!state.troubles().equals(troubles)) {
            troubles = state.troubles();
            terminal.err()
                    .println("bookholder: " + (troubles.isEmpty() ? "all is well again" : TroubleText.of(troubles)));
        }
        if (showLines && terminal.entered()) {
            reading.tell(new TakeCommand.Quit());
        }
        waitForTheOpenEar(reading.progress());
    }

    /** What is to be done about a reading that was interrupted and has not ended. */
    private EndDeadline.Step step() {
        if (shutdown.asked() && deadline.isEmpty()) {
            deadline = Optional.of(new EndDeadline(here.nanoTime()));
        }
        return deadline.map(EndDeadline::step).orElse(EndDeadline.Step.WAIT);
    }

    private void waitForTheOpenEar(ReadingProgress progress) {
        long now = here.nanoTime().getAsLong();
        if (step() == EndDeadline.Step.HURRY) {
            reading.hurry();
        }
        double behind = progress.behind().seconds();
        if (!progress.rolling() && behind >= 1 && now - noticed > NOTICE_NANOS) {
            noticed = now;
            terminal.out().printf(Locale.ROOT, "Still listening to the last %.0f s...%n", behind);
        }
    }
}
