package org.bookholder.cli;

import java.io.PrintStream;
import java.util.Locale;
import java.util.function.LongSupplier;
import org.bookholder.course.Text;

/**
 * Shows on a console how far something has got, and about how long it still takes. Says nothing where another program or a
 * file reads the output.
 */
final class ProgressBar implements AutoCloseable {
    private static final int WIDTH = 30;
    private static final long PERIOD_NANOS = 200_000_000L;

    private final PrintStream out;
    private final boolean console;
    private final LongSupplier nanoTime;
    private final String name;
    private final long begun;
    private long shown;

    ProgressBar(PrintStream out, boolean console, LongSupplier nanoTime, String name) {
        this.out = out;
        this.console = console;
        this.nanoTime = nanoTime;
        this.name = name;
        begun = nanoTime.getAsLong();
        shown = begun - PERIOD_NANOS;
    }

    /** So much of 1 is done. */
    void show(double part) {
        show(name, part);
    }

    /** The same of what is called {@code step} meanwhile, a name no longer than the bar's. */
    void show(String step, double part) {
        long now = nanoTime.getAsLong();
        if (!console || now - shown < PERIOD_NANOS) {
            return;
        }
        shown = now;
        out.print("\r" + text(step, part, (now - begun) / 1e9));
        out.flush();
    }

    /** Takes the bar away. */
    @Override
    public void close() {
        if (console) {
            out.print("\r" + " ".repeat(name.length() + WIDTH + 30) + "\r");
            out.flush();
        }
    }

    private String text(String step, double part, double seconds) {
        double done = Math.max(0, Math.min(1, part));
        int full = (int) (done * WIDTH);
        double left = done < 0.02 ? -1 : seconds / done - seconds;
        return String.format(
                Locale.ROOT,
                "%s  [%s%s] %3.0f %%%s",
                step,
                "#".repeat(full),
                ".".repeat(WIDTH - full),
                100 * done,
                left < 0 ? "          " : "  " + Text.clock(left) + " left  ");
    }
}
