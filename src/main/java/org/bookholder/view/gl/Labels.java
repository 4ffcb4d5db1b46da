package org.bookholder.view.gl;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.view.Face;

/** Sets short texts by their left end, right end or middle, at a height that is the middle of their capitals. */
final class Labels {
    private final Canvas canvas;
    private final Texts texts;

    Labels(Canvas canvas, Texts texts) {
        this.canvas = canvas;
        this.texts = texts;
    }

    /** Length in pixels. */
    double length(String text, Face face, double size) {
        return text.isEmpty() ? 0 : texts.get(text, face, size).advance();
    }

    /** Sets text from {@code x} to the right; returns where it ends. */
    double left(String text, Face face, double size, double x, double middle, int rgb, double light) {
        if (text.isEmpty()) {
            return x;
        }
        Texts.Text ready = texts.get(text, face, size);
        double left = Math.rint(x);
        canvas.text(ready, left, Math.rint(middle + Painter.MIDDLE * size), rgb, light);
        return left + ready.advance();
    }

    /** Sets text that ends at {@code x}; returns where it begins. */
    double right(String text, Face face, double size, double x, double middle, int rgb, double light) {
        double left = x - length(text, face, size);
        left(text, face, size, left, middle, rgb, light);
        return left;
    }

    /** Sets text around {@code x}. */
    void centred(String text, Face face, double size, double x, double middle, int rgb, double light) {
        left(text, face, size, x - length(text, face, size) / 2, middle, rgb, light);
    }

    /** The words of a text in rows no longer than {@code width} pixels, unless a word is. */
    List<String> wrap(String text, Face face, double size, double width) {
        List<String> rows = new ArrayList<>();
        String row = "";
        for (String word : text.split(" ", -1)) {
            String longer = row.isEmpty() ? word : row + " " + word;
            if (!row.isEmpty() && length(longer, face, size) > width) {
                rows.add(row);
                row = word;
            } else {
                row = longer;
            }
        }
        rows.add(row);
        return rows;
    }

    /** The text, cut short with an ellipsis if it is longer than {@code width} pixels. */
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
