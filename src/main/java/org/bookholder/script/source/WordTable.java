package org.bookholder.script.source;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.poi.xwpf.usermodel.ICell;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.apache.poi.xwpf.usermodel.XWPFSDTCell;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.apache.poi.xwpf.usermodel.XWPFTableCell;
import org.apache.poi.xwpf.usermodel.XWPFTableRow;
import org.bookholder.script.model.LeftOut;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTTcPr;

/**
 * A table of a DOCX document, with merged cells at the columns that they cover.
 *
 * @param rows its rows
 */
record WordTable(List<List<Cell>> rows) {
    /**
     * A cell.
     *
     * @param column its first column, from 0
     * @param span how many columns it covers
     * @param paragraphs its paragraphs as CommonMark
     * @param plain its text
     */
    record Cell(int column, int span, List<String> paragraphs, String plain) {
        boolean covers(Set<Integer> columns) {
            return columns.stream().anyMatch(one -> one >= column && one < column + span);
        }
    }

    /** Takes a table; what of it is not seen is added to {@code leftOut}. */
    static WordTable of(XWPFTable table, List<LeftOut> leftOut) {
        List<List<Cell>> rows = new ArrayList<>();
        for (XWPFTableRow row : table.getRows()) {
            List<Cell> cells = new ArrayList<>();
            int column = 0;
            for (ICell cell : row.getTableICells()) {
                Cell one = cell(cell, column, leftOut);
                cells.add(one);
                column += one.span;
            }
            rows.add(cells);
        }
        return new WordTable(rows);
    }

    private static Cell cell(ICell cell, int column, List<LeftOut> leftOut) {
        if (cell instanceof XWPFTableCell plain) {
            List<String> paragraphs = new ArrayList<>();
            for (XWPFParagraph paragraph : plain.getParagraphs()) {
                paragraphs.add(WordParagraph.marked(paragraph, leftOut).strip());
            }
            return new Cell(column, span(plain), paragraphs, plain.getText().strip());
        }
        String text = cell instanceof XWPFSDTCell field ? field.getContent().getText() : "";
        return new Cell(column, 1, WordParagraph.escaped(text).lines().toList(), text.strip());
    }

    private static int span(XWPFTableCell cell) {
        CTTcPr properties = cell.getCTTc().getTcPr();
        if (properties == null || !properties.isSetGridSpan()) {
            return 1;
        }
        BigInteger span = properties.getGridSpan().getVal();
        return span == null ? 1 : Math.max(1, Math.min(span.intValue(), 99));
    }

    private int width() {
        return rows.stream().mapToInt(WordTable::width).max().orElse(0);
    }

    private static int width(List<Cell> row) {
        return row.stream().mapToInt(cell -> cell.column + cell.span).max().orElse(0);
    }

    /** Whether a cell is read: it covers a column that is, and does not go over the whole table. */
    boolean isSpoken(Cell cell, Set<Integer> spoken) {
        return cell.covers(spoken) && (cell.span < width() || width() == 1);
    }

    /** The texts by columns; the further columns of a merged cell are empty. */
    List<List<String>> texts() {
        List<List<String>> texts = new ArrayList<>();
        for (List<Cell> row : rows) {
            List<String> columns = new ArrayList<>();
            for (Cell cell : row) {
                columns.add(cell.plain);
                for (int i = 1; i < cell.span; i++) {
                    columns.add("");
                }
            }
            texts.add(columns);
        }
        return texts;
    }

    /** Which columns are read: those that were chosen for this table, if any were. */
    SpokenColumns columns(int number, Map<Integer, Set<Integer>> chosen) {
        return chosen.containsKey(number)
                ? SpokenColumns.chosen(chosen.getOrDefault(number, Set.of()), texts())
                : SpokenColumns.of(number, texts(), 0);
    }
}
