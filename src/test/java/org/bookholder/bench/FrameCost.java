package org.bookholder.bench;

import java.util.Locale;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Scripts;
import org.bookholder.view.gl.FrameRun;

/**
 * Measures what a picture of the reading window costs on the thread that draws it, before the swap, in scripts of two
 * lengths; needs a display.
 */
public final class FrameCost {
    private static final int WORDS_OF_A_LINE = 10;

    private FrameCost() {}

    /** Measures and prints. */
    public static void main(String[] args) throws ProblemException {
        for (int words : new int[] {500, 10_000}) {
            FrameRun.Figures figures = new FrameRun().run(Scripts.sized(100, words / WORDS_OF_A_LINE, WORDS_OF_A_LINE));
            System.out.printf(
                    Locale.ROOT,
                    "%,6d words: first picture after %.0f ms (to reach: 1000); a picture %.2f ms, at 99 %% %.2f ms "
                            + "(to reach: 2 and 4), %,d bytes allocated (to reach: 0)%n",
                    words,
                    figures.openMillis(),
                    figures.median(),
                    figures.most(),
                    figures.bytes());
        }
    }
}
