package org.bookholder.view.gl;

import java.util.List;
import org.bookholder.view.layout.Face;

/** A text broken into rows; it is broken again only if the text or the available width has changed. */
final class Paragraph {
    private final LabelPainter labels;
    private String text = "";
    private double size;
    private double width;
    private List<String> rows = List.of();

    Paragraph(LabelPainter labels) {
        this.labels = labels;
    }

    /** Breaks the words into rows no longer than {@code newWidth} pixels, unless a single word is longer. */
    List<String> rows(String newText, double newSize, double newWidth) {
        if (newSize != size || newWidth != width || !newText.equals(text)) {
            text = newText;
            size = newSize;
            width = newWidth;
            rows = labels.wrap(newText, Face.FIGURE, newSize, newWidth);
        }
        return rows;
    }
}
