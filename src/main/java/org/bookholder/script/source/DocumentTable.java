package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * A table of a document, for the choice of which columns are spoken.
 *
 * @param number its place among the document's tables, from 1
 * @param columns its columns, from left to right
 */
public record DocumentTable(int number, List<Column> columns) {
    /** Copies the list. */
    public DocumentTable {
        columns = List.copyOf(columns);
    }

    /**
     * A table by its cells' texts.
     *
     * @param spoken the columns that are read, from 0
     */
    static DocumentTable of(int number, List<List<String>> texts, Set<Integer> spoken) {
        int width = texts.stream().mapToInt(List::size).max().orElse(0);
        List<Column> columns = new ArrayList<>();
        for (int i = 0; i < width; i++) {
            int column = i;
            List<String> cells = texts.stream()
                    .filter(row -> column < row.size())
                    .map(row -> row.get(column))
                    .toList();
            columns.add(new Column(
                    ScriptBuilder.brief(cells.get(0)),
                    cells.stream().mapToInt(SpokenColumns::words).sum(),
                    spoken.contains(i)));
        }
        return new DocumentTable(number, columns);
    }

    /**
     * A column.
     *
     * @param heading its first cell, shortened
     * @param words how many words stand in its cells
     * @param spoken whether it is read aloud; the other columns are directions
     */
    public record Column(String heading, int words, boolean spoken) {}
}
