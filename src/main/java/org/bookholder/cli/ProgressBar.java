package org.bookholder.cli;

import java.io.PrintStream;
import java.util.Locale;
import java.util.function.LongSupplier;
import org.bookholder.app.environment.Progress;
import org.bookholder.course.Text;

/**
 * Shows the progress and the estimated remaining time of work on a console. Prints nothing if the output goes to
 * another program or a file.
 */
final class ProgressBar implements AutoCloseable {
    private static final int WIDTH = 30;
    private static final long PERIOD_NANOS = 200_000_000L;

    private final PrintStream out;
    private final boolean console;
    private final LongSupplier nanoTime;
    private long shown;
    private int width;

    ProgressBar(PrintStream out, boolean console, LongSupplier nanoTime) {
        this.out = out;
        this.console = console;
        this.nanoTime = nanoTime;
        shown = nanoTime.getAsLong() - PERIOD_NANOS;
    }

    /** Shows progress, unless it did so a moment ago. */
    void show(Progress progress) {
        long now = nanoTime.getAsLong();
        if (!console || now - shown < PERIOD_NANOS) {
            return;
        }
        shown = now;
        String text = text(progress);
        width = Math.max(width, text.length());
        out.write('\r');
        out.print(text);
        out.flush();
    }

    /** Removes the bar. */
    @Override
    public void close() {
        if (console) {
            out.write('\r');
            out.print(" ".repeat(width));
            out.write('\r');
            out.flush();
        }
    }

    private static String text(Progress progress) {
        int full = (int) (progress.done() * WIDTH);
        return String.format(
                Locale.ROOT,
                "%s  [%s%s] %3.0f %%%s",
                progress.what(),
                "#".repeat(full),
                ".".repeat(WIDTH - full),
                100 * progress.done(),
                progress.secondsLeft().isEmpty()
                        ? "          "
                        : "  " + Text.clock(progress.secondsLeft().getAsDouble()) + " left  ");
    }
}
