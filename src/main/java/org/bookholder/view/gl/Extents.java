package org.bookholder.view.gl;

import java.util.Arrays;

/** Where the chars of a shaped text stand, in pixels from the text's left. */
final class Extents {
    private final double[] lefts;
    private final double[] rights;
    private double length;
    private boolean mixed;

    /** For a text of so many chars; filled by {@link #add} and {@link #finish}. */
    Extents(int chars) {
        lefts = new double[chars];
        rights = new double[chars];
        Arrays.fill(lefts, Double.POSITIVE_INFINITY);
        Arrays.fill(rights, Double.NEGATIVE_INFINITY);
    }

    /** Notes that a glyph of the char at {@code index} and those that are one with it takes a place. */
    void add(int index, double left, double right) {
        lefts[index] = Math.min(lefts[index], left);
        rights[index] = Math.max(rights[index], right);
    }

    /** Where one glyph stands for several of the chars {@code from} to {@code to}, they share its place evenly. */
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

    /** Where the leftmost of some chars begins; for none, where the next char does. */
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

    /** Where the rightmost of some chars ends; 0 for none. */
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

    /** Whether some of it runs from right to left. */
    boolean mixed() {
        return mixed;
    }
}
