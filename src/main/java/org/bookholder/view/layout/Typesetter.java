package org.bookholder.view.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptSettings.LineBreaks;

/** Sets a script in rows. Used once for each layout. */
public final class Typesetter {
    private static final double DIRECTION_SIZE = 0.72;
    private static final double DIRECTION_PITCH = 1.35;

    /** WCAG 2.2, 1.4.8: paragraph spacing is at least 1.5 times line spacing. */
    private static final double PARAGRAPH_GAP = 0.6;

    private static final double DIRECTION_GAP = 0.18;

    private final Geometry geometry;
    private final TextMeasure measure;
    private final PieceCutter cutter;
    private final RowBreaker breaker;
    private final List<Row> rows = new ArrayList<>();
    private double bottom;
    private int words;
    private int spoken;

    private Typesetter(Geometry geometry, TextMeasure measure, boolean english) {
        this.geometry = geometry;
        this.measure = measure;
        double column = geometry.columnWidth() / geometry.em();
        cutter = new PieceCutter(measure, column, english);
        breaker = new RowBreaker(column, measure.advance(" ", Face.READING));
    }

    /** Sets the script in rows that fit the geometry's column. */
    public static Layout set(Script script, Geometry geometry, TextMeasure measure) {
        boolean english = script.settings().english();
        Typesetter setter = new Typesetter(geometry, measure, english);
        boolean asWritten = script.settings().lineBreaks() == LineBreaks.AS_WRITTEN;
        List<Piece> block = new ArrayList<>();
        int paragraph = -1;
        boolean afterDirection = false;
        for (ScriptElement element : script.elements()) {
            boolean direction = element instanceof Direction;
            if (direction || asWritten || afterDirection || element.paragraph() != paragraph) {
                setter.block(block);
                setter.gap(direction || afterDirection, element.paragraph() != paragraph);
            }
            if (element instanceof Direction d) {
                setter.direction(d);
            } else if (element instanceof ScriptLine line) {
                block.addAll(setter.cutter.line(line, setter.words));
                setter.words += line.words().size();
            }
            paragraph = element.paragraph();
            afterDirection = direction;
        }
        setter.block(block);
        return new Layout(setter.rows, setter.spoken, geometry.pitch());
    }

    private void gap(boolean besideDirection, boolean newParagraph) {
        if (!rows.isEmpty()) {
            double share = besideDirection ? DIRECTION_GAP : newParagraph ? PARAGRAPH_GAP : 0;
            bottom += share * geometry.pitch();
        }
    }

    private void block(List<Piece> pieces) {
        if (pieces.isEmpty()) {
            return;
        }
        boolean rightToLeft = Flow.rightToLeft(text(pieces));
        for (List<Piece> row : breaker.rows(pieces)) {
            double longest = geometry.columnWidth() / geometry.em();
            double width = row.size() == 1 ? row.get(0).width() : 0;
            double size = width > longest ? geometry.em() * longest / width : geometry.em();
            add(Face.READING, row, size, geometry.pitch(), rightToLeft);
        }
        pieces.clear();
    }

    private void direction(Direction direction) {
        double size = DIRECTION_SIZE * geometry.em();
        double column = geometry.columnWidth() / geometry.em();
        RowBreaker slanted = new RowBreaker(column, measure.advance(" ", Face.DIRECTION) * DIRECTION_SIZE);
        if (!direction.text().isBlank()) {
            boolean rightToLeft = Flow.rightToLeft(direction.text());
            for (List<Piece> row : slanted.rows(cutter.direction(direction.text(), DIRECTION_SIZE))) {
                add(Face.DIRECTION, row, size, DIRECTION_PITCH * size, rightToLeft);
            }
        }
    }

    private static String text(List<Piece> pieces) {
        return pieces.stream().map(Piece::text).collect(Collectors.joining(" "));
    }

    private void add(Face face, List<Piece> pieces, double size, double height, boolean rightToLeft) {
        Row row = Row.of(rows.size(), face, pieces, bottom + height / 2, size, spoken, rightToLeft);
        rows.add(row);
        spoken += row.spoken();
        bottom += height;
    }
}
