package org.bookholder.script.source;

import java.util.List;

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
     * A column.
     *
     * @param heading its first cell, shortened
     * @param words how many words stand in its cells
     * @param spoken whether it is read aloud; the other columns are directions
     */
    public record Column(String heading, int words, boolean spoken) {}
}
