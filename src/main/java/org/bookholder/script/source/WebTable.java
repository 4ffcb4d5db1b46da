package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.commonmark.node.HtmlBlock;
import org.commonmark.node.Node;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;
import org.jspecify.annotations.Nullable;

/** The cells of a table of a web page at their columns: cells that go over several columns or rows push the others aside. */
final class WebTable {
    /** A cell covers no more columns and rows than this, whatever it says. */
    static final int WIDEST = 99;

    private static final Pattern BEGIN = Pattern.compile("(?i)<table[\\s>]");
    private static final Pattern END = Pattern.compile("(?i)</table");

    private WebTable() {}

    /** Whether a table begins in a block of HTML of CommonMark text, and not in a comment. */
    private static boolean isIn(HtmlBlock html) {
        String written = html.getLiteral().stripLeading();
        return !written.startsWith("<!--") && BEGIN.matcher(written).find();
    }

    /**
     * The blocks of the table that begins in {@code first}: at a blank line a block ends, and the rows behind it are the next. Empty if none
     * begins there, or no text stands between their marks.
     */
    static List<HtmlBlock> blocks(HtmlBlock first) {
        List<HtmlBlock> blocks = new ArrayList<>();
        @Nullable Node block = isIn(first) ? first : null;
        while (block instanceof HtmlBlock html) {
            blocks.add(html);
            block = END.matcher(html.getLiteral()).find() ? null : html.getNext();
        }
        return page(blocks).text().isBlank() ? List.of() : blocks;
    }

    /** The page that blocks of HTML make together. */
    static Element page(List<HtmlBlock> blocks) {
        String markup = blocks.stream().map(HtmlBlock::getLiteral).collect(Collectors.joining("\n"));
        return Jsoup.parse(markup).body();
    }

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
