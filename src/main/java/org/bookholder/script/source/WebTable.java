package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jsoup.nodes.Element;

/** The cells of a table of a web page at their columns: cells that go over several columns or rows push the others aside. */
final class WebTable {
    /** A cell covers no more columns and rows than this, whatever it says. */
    private static final int WIDEST = 99;

    private WebTable() {}

    /** The cells of each row by their first column, from 0. */
    static List<SortedMap<Integer, Element>> grid(List<Element> rows) {
        List<SortedMap<Integer, Element>> grid = new ArrayList<>();
        Map<Integer, Integer> covered = new HashMap<>();
        for (Element row : rows) {
            SortedMap<Integer, Element> cells = new TreeMap<>();
            int column = 0;
            Map<Integer, Integer> below = new HashMap<>();
            covered.forEach((at, more) -> below.put(at, more - 1));
            for (Element cell : row.children()) {
                if (!Set.of("td", "th").contains(cell.normalName())) {
                    continue;
                }
                while (covered.getOrDefault(column, 0) > 0) {
                    column++;
                }
                cells.put(column, cell);
                int high = span(cell, "rowspan");
                for (int i = span(cell, "colspan"); i > 0; i--) {
                    below.put(column++, high - 1);
                }
            }
            covered.clear();
            covered.putAll(below);
            grid.add(cells);
        }
        return grid;
    }

    private static int span(Element cell, String attribute) {
        String written = cell.attr(attribute).strip();
        return written.matches("[1-9]\\d{0,2}") ? Math.min(Integer.parseInt(written), WIDEST) : 1;
    }

    /** The texts of a row by columns; a column without a cell of its own is empty. */
    static List<String> texts(SortedMap<Integer, Element> cells) {
        List<String> texts = new ArrayList<>();
        cells.forEach((column, cell) -> {
            while (texts.size() < column) {
                texts.add("");
            }
            texts.add(cell.text());
        });
        return texts;
    }
}
