package org.bookholder.view.gl;

import java.util.Arrays;

/** The positions of the chars of a shaped text, in pixels from the left end of the text. */
final class Extents {
    private final double[] lefts;
    private final double[] rights;
    private double length;
    private boolean mixed;

    /** Creates extents for a text of {@code chars} chars; fill them with {@link #add} and {@link #finish}. */
    Extents(int chars) {
        lefts = new double[chars];
        rights = new double[chars];
        Arrays.fill(lefts, Double.POSITIVE_INFINITY);
        Arrays.fill(rights, Double.NEGATIVE_INFINITY);
    }

    /** Notes the place of a glyph for the char at {@code index} and for the chars combined with it. */
    void add(int index, double left, double right) {
        lefts[index] = Math.min(lefts[index], left);
        rights[index] = Math.max(rights[index], right);
    }

    /** If one glyph represents several of the chars {@code from} to {@code to}, divides its width evenly among them. */
    void share(int from, int to, boolean rightToLeft) {
        int start = from;
        for (int i = from + 1; i <= to; i++) {
            if (i == to || lefts[i] < Double.POSITIVE_INFINITY) {
                shareOne(start, i, rightToLeft);
                start = i;
            }
        }
        mixed |= rightToLeft;
    }

    private void shareOne(int from, int to, boolean rightToLeft) {
        double left = lefts[from];
        double each = (rights[from] - left) / (to - from);
        for (int i = from; i < to; i++) {
            int step = rightToLeft ? to - 1 - i : i - from;
            lefts[i] = left + step * each;
            rights[i] = left + (step + 1) * each;
        }
    }

    /** Notes where the text ends. */
    void finish(double end) {
        length = end;
    }

    /** The left end of the leftmost of some chars; for an empty range, the left end of the next char. */
    double left(int from, int to) {
        if (from == to) {
            return from < lefts.length ? lefts[from] : length;
        }
        double left = Double.POSITIVE_INFINITY;
        for (int i = from; i < to; i++) {
            left = Math.min(left, lefts[i]);
        }
        return left;
    }

    /** The right end of the rightmost of some chars; 0 for an empty range. */
    double right(int from, int to) {
        double right = 0;
        for (int i = from; i < to; i++) {
            right = Math.max(right, rights[i]);
        }
        return right;
    }

    /** Where the text ends. */
    double length() {
        return length;
    }

    /** Whether any of the text runs from right to left. */
    boolean mixed() {
        return mixed;
    }
}
