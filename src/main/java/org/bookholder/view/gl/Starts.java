package org.bookholder.view.gl;

import java.util.Arrays;

/** Where each char of a shaped text begins, in pixels from the text's left. */
final class Starts {
    private final double[] starts;

    /** For a text of so many chars; filled by {@link #begin} and {@link #finish}. */
    Starts(int chars) {
        starts = new double[chars + 1];
        Arrays.fill(starts, -1);
    }

    /** Notes that a glyph of the char at {@code index} begins at {@code x}; the leftmost counts. */
    void begin(int index, double x) {
        starts[index] = starts[index] < 0 ? x : Math.min(starts[index], x);
    }

    /** Notes where the text ends; a char without a glyph of its own begins where the next one does. */
    void finish(double end) {
        starts[starts.length - 1] = end;
        for (int i = starts.length - 2; i >= 0; i--) {
            starts[i] = starts[i] < 0 ? starts[i + 1] : starts[i];
        }
    }

    /** Where the char at {@code index} begins; one past the last char is where the text ends. */
    double at(int index) {
        return starts[index];
    }

    /** Where the text ends. */
    double end() {
        return starts[starts.length - 1];
    }
}
