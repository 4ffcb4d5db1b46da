package org.bookholder.view.gl;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bookholder.view.layout.Face;

/**
 * Draws short texts aligned by their left end, right end or middle; the given height is the middle of their capital
 * letters.
 */
final class LabelPainter {
    /** To make rows even, the available width is reduced in steps of the first share, down to the second share. */
    private static final double STEP_SHARE = 0.04;

    private static final double LEAST_SHARE = 0.5;

    private final Canvas canvas;
    private final Texts texts;

    LabelPainter(Canvas canvas, Texts texts) {
        this.canvas = canvas;
        this.texts = texts;
    }

    /** Length in pixels. */
    double length(String text, Face face, double size) {
        return text.isEmpty() ? 0 : texts.get(text, face, size).advance();
    }

    /** Draws text to the right from {@code x}; returns its right end. */
    double left(String text, Face face, double size, double x, double middle, int rgb, double light) {
        if (text.isEmpty()) {
            return x;
        }
        Texts.Text ready = texts.get(text, face, size);
        double left = Math.rint(x);
        canvas.text(ready, left, Math.rint(middle + Painter.MIDDLE * size), rgb, light);
        return left + ready.advance();
    }

    /** Draws text that ends at {@code x}; returns its left end. */
    double right(String text, Face face, double size, double x, double middle, int rgb, double light) {
        double left = x - length(text, face, size);
        left(text, face, size, left, middle, rgb, light);
        return left;
    }

    /** Draws text centred on {@code x}. */
    void centred(String text, Face face, double size, double x, double middle, int rgb, double light) {
        left(text, face, size, x - length(text, face, size) / 2, middle, rgb, light);
    }

    /**
     * Breaks a text into rows no longer than {@code width} pixels, unless a single word is longer. The rows are as even
     * as their number allows, so that no word is left alone in the last one.
     */
    List<String> wrap(String text, Face face, double size, double width) {
        String[] words = text.split(" ", -1);
        double[] lengths = Arrays.stream(words)
                .mapToDouble(word -> length(word, face, size))
                .toArray();
        double space = length("n n", face, size) - length("nn", face, size);
        List<String> rows = rows(words, lengths, space, width);
        double narrower = width;
        while (rows.size() > 1 && narrower > LEAST_SHARE * width) {
            narrower -= STEP_SHARE * width;
            List<String> even = rows(words, lengths, space, narrower);
            if (even.size() > rows.size()) {
                break;
            }
            rows = even;
        }
        return rows;
    }

    private static List<String> rows(String[] words, double[] lengths, double space, double width) {
        List<String> rows = new ArrayList<>();
        String row = words[0];
        double length = lengths[0];
        for (int i = 1; i < words.length; i++) {
            if (length + space + lengths[i] > width) {
                rows.add(row);
                row = words[i];
                length = lengths[i];
            } else {
                row += " " + words[i];
                length += space + lengths[i];
            }
        }
        rows.add(row);
        return rows;
    }

    /** The text, shortened with an ellipsis if it is longer than {@code width} pixels. */
    String fitted(String text, Face face, double size, double width) {
        if (length(text, face, size) <= width) {
            return text;
        }
        Extents places = texts.get(text, face, size).places();
        int end = text.length();
        while (end > 0 && places.right(0, end) > width - size) {
            end--;
        }
        int space = text.lastIndexOf(' ', end);
        return text.substring(0, space > end / 2 ? space : end).stripTrailing() + " …";
    }
}
