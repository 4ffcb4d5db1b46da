package org.bookholder.handoff.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;

/** Places text down a page and starts a new page when it is full. Sizes in points. */
final class PdfPage implements AutoCloseable {
    /** This font comes with the PDF library; it has Latin, Greek, Cyrillic and Hebrew letters. */
    private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

    private static final PDRectangle SIZE = PDRectangle.A4;
    private static final float MARGIN = 56;
    private static final float LEADING = 1.35f;

    /** Drawing outlines of this width, as a share of the size, makes the only font bold. */
    private static final float BOLD = 0.03f;

    private static final String MISSING = "\u25A1";

    private final PDDocument document;
    private final PDFont font;
    private PDPageContentStream content;
    private int number;
    private float top;

    PdfPage(PDDocument document) throws IOException {
        this.document = document;
        try (InputStream in = PDDocument.class.getResourceAsStream(FONT)) {
            if (in == null) {
                throw new IllegalStateException("the font " + FONT + " must be on the class path");
            }
            font = PDType0Font.load(document, in);
        }
        content = next();
    }

    /** Text from {@code indent} to the right margin, in as many rows as it takes. */
    void block(float size, boolean bold, float indent, String text) throws IOException {
        for (String row : rows(size, indent, text)) {
            if (top - size * LEADING < MARGIN) {
                turn();
            }
            show(size, bold, MARGIN + indent, top - size, row);
            top -= size * LEADING;
        }
    }

    /** A word in the margin that ends at {@code right}, beside the next block. */
    void label(float size, float least, float right, String text) throws IOException {
        float x = Math.max(least, right - width(size, text));
        show(size, false, MARGIN + x, top - size, text);
    }

    /** An empty box to tick, beside the next block. */
    void box(float size) throws IOException {
        content.setLineWidth(0.8f);
        content.addRect(MARGIN, top - size - 1, size, size);
        content.stroke();
    }

    void rule() throws IOException {
        top -= 10;
        content.setLineWidth(0.6f);
        content.moveTo(MARGIN, top);
        content.lineTo(SIZE.getWidth() - MARGIN, top);
        content.stroke();
        top -= 16;
    }

    void space(float height) {
        top -= height;
    }

    float height(float size, float indent, String text) throws IOException {
        return rows(size, indent, text).size() * size * LEADING;
    }

    /** Begins a new page if something of this height does not fit on this one but would fit on a new one. */
    void keepTogether(float height) throws IOException {
        if (top - height < MARGIN && height < SIZE.getHeight() - 2 * MARGIN) {
            turn();
        }
    }

    void finish() throws IOException {
        foot();
        content.close();
    }

    @Override
    public void close() throws IOException {
        content.close();
    }

    private void turn() throws IOException {
        finish();
        content = next();
    }

    private PDPageContentStream next() throws IOException {
        PDPage page = new PDPage(SIZE);
        document.addPage(page);
        number++;
        top = SIZE.getHeight() - MARGIN;
        return new PDPageContentStream(document, page);
    }

    private void foot() throws IOException {
        show(8, false, SIZE.getWidth() - MARGIN - 10, MARGIN / 2, Integer.toString(number));
    }

    private void show(float size, boolean bold, float x, float y, String text) throws IOException {
        content.beginText();
        content.setRenderingMode(bold ? RenderingMode.FILL_STROKE : RenderingMode.FILL);
        content.setLineWidth(BOLD * size);
        content.setFont(font, size);
        content.newLineAtOffset(x, y);
        content.showText(shown(text));
        content.endText();
    }

    private List<String> rows(float size, float indent, String text) throws IOException {
        float room = SIZE.getWidth() - 2 * MARGIN - indent;
        List<String> rows = new ArrayList<>();
        String row = "";
        for (String word : text.strip().split("\\s+", -1)) {
            String longer = row.isEmpty() ? word : row + " " + word;
            if (!row.isEmpty() && width(size, longer) > room) {
                rows.add(row);
                longer = word;
            }
            row = longer;
            while (width(size, row) > room) {
                int fits = fitting(size, room, row);
                rows.add(row.substring(0, fits));
                row = row.substring(fits);
            }
        }
        rows.add(row);
        return rows;
    }

    private int fitting(float size, float room, String word) throws IOException {
        int end = word.offsetByCodePoints(0, 1);
        while (end < word.length()) {
            int longer = word.offsetByCodePoints(end, 1);
            if (width(size, word.substring(0, longer)) > room) {
                break;
            }
            end = longer;
        }
        return end;
    }

    private float width(float size, String text) throws IOException {
        return font.getStringWidth(shown(text)) / 1000 * size;
    }

    /** The text with an empty square for each character that the font lacks. */
    private String shown(String text) {
        StringBuilder shown = new StringBuilder();
        text.codePoints().forEach(c -> shown.append(has(c) ? Character.toString(c) : MISSING));
        return shown.toString();
    }

    private boolean has(int character) {
        try {
            font.encode(Character.toString(character));
            return true;
        } catch (IOException | IllegalArgumentException e) {
            return false;
        }
    }
}
