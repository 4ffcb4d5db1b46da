package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.commonmark.ext.gfm.tables.TableCell;
import org.commonmark.ext.gfm.tables.TableRow;
import org.commonmark.node.Node;

/**
 * A table in CommonMark text (GitHub Flavored Markdown), row by row.
 *
 * @param rows its rows, that of the headings first
 */
record MarkdownTable(List<List<TableCell>> rows) {
    /** Collects the cells below a table's node. */
    static MarkdownTable of(Node block) {
        List<List<TableCell>> rows = new ArrayList<>();
        for (Node part = block.getFirstChild(); part != null; part = part.getNext()) {
            for (Node row = part.getFirstChild(); row != null; row = row.getNext()) {
                if (row instanceof TableRow) {
                    rows.add(cells(row));
                }
            }
        }
        return new MarkdownTable(rows);
    }

    private static List<TableCell> cells(Node row) {
        List<TableCell> cells = new ArrayList<>();
        for (Node cell = row.getFirstChild(); cell != null; cell = cell.getNext()) {
            if (cell instanceof TableCell one) {
                cells.add(one);
            }
        }
        return cells;
    }

    /** The texts of the cells. */
    List<List<String>> texts(Function<Node, String> plain) {
        return rows.stream()
                .map(row -> row.stream().map(cell -> plain.apply(cell)).toList())
                .toList();
    }
}
