package org.bookholder.bench;

import java.lang.management.ManagementFactory;
import java.util.Locale;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Scripts;
import org.bookholder.view.gl.FrameRun;

/**
 * Measures how soon the reading window opens, and what a picture of it costs on the thread that draws it, before the swap, in
 * scripts of two lengths; needs a display.
 */
public final class FrameCost {
    private static final int WORDS_OF_A_LINE = 10;

    private FrameCost() {}

    /** Measures and prints. */
    public static void main(String[] args) throws ProblemException {
        long begun = ManagementFactory.getRuntimeMXBean().getStartTime();
        System.out.printf(Locale.ROOT, "%,d ms from the start of the JVM%n", System.currentTimeMillis() - begun);
        for (int words : new int[] {10_000, 500, 10_000}) {
            FrameRun.Figures figures = new FrameRun().run(Scripts.sized(100, words / WORDS_OF_A_LINE, WORDS_OF_A_LINE));
            System.out.printf(
                    Locale.ROOT,
                    "%,6d words: first picture after %.0f ms (to reach: 1000): window %.0f, fonts %.0f, rows %.0f, picture "
                            + "%.0f%n    a picture %.2f ms, at 99 %% %.2f ms (to reach: 2 and 4); %,d bytes allocated (to "
                            + "reach: 0), in one of a hundred %,d, by all together %,d%n",
                    words,
                    figures.openMillis(),
                    figures.windowMillis(),
                    figures.fontsMillis(),
                    figures.rowsMillis(),
                    figures.openMillis() - figures.windowMillis() - figures.fontsMillis() - figures.rowsMillis(),
                    figures.median(),
                    figures.most(),
                    figures.bytes(),
                    figures.mostBytes(),
                    figures.allBytes());
        }
    }
}
