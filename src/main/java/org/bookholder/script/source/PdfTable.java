package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.bookholder.script.model.LeftOut;

/**
 * Puts the tables of a PDF into its text: the columns that are read as paragraphs, the others as directions. Where all columns are read,
 * each row is a paragraph.
 */
final class PdfTable {
    private final Map<Integer, Set<Integer>> chosen;
    private final List<LeftOut> leftOut;
    private final List<DocumentTable> tables = new ArrayList<>();
    private final List<List<String>> open = new ArrayList<>();

    /**
     * A writer.
     *
     * @param chosen for tables, by their numbers from 1, which columns are spoken, from 0
     * @param leftOut gets what is neither read nor shown
     */
    PdfTable(Map<Integer, Set<Integer>> chosen, List<LeftOut> leftOut) {
        this.chosen = Map.copyOf(chosen);
        this.leftOut = leftOut;
    }

    /** Adds rows; those of the table before, on the page before, go on if nothing stands between. */
    void add(List<List<String>> rows, StringBuilder text) {
        if (!open.isEmpty() && open.get(0).size() != rows.get(0).size()) {
            end(text);
        }
        open.addAll(rows);
    }

    /** Writes the table that is open, if one is. */
    void end(StringBuilder text) {
        if (open.isEmpty()) {
            return;
        }
        List<List<String>> rows = List.copyOf(open);
        open.clear();
        int number = tables.size() + 1;
        SpokenColumns columns = chosen.containsKey(number)
                ? SpokenColumns.chosen(chosen.getOrDefault(number, Set.of()), rows)
                : SpokenColumns.guessed(number, rows);
        leftOut.addAll(columns.notes());
        // as in a list whose items have names before them
        boolean prose =
                !columns.headed() && columns.spoken().size() == rows.get(0).size();
        for (int i = 0; i < rows.size(); i++) {
            // they stand again on each page
            if (columns.headed() && rows.get(i).equals(rows.get(0))) {
                String headings = ScriptBuilder.brief(String.join(" | ", rows.get(i)));
                leftOut.add(new LeftOut(0, headings, "the headings of a table"));
            } else if (prose) {
                StringBuilder paragraph = new StringBuilder();
                rows.get(i).stream().filter(cell -> !cell.isBlank()).forEach(cell -> PdfDocument.join(paragraph, cell));
                paragraph.toString().lines().forEach(line -> write(line, true, text));
            } else {
                write(rows.get(i), columns.spoken(), text);
            }
        }
        tables.add(DocumentTable.of(number, rows, columns.spoken()));
    }

    private static void write(List<String> row, Set<Integer> read, StringBuilder text) {
        boolean merged = row.size() == 1;
        for (int i = 0; i < row.size(); i++) {
            boolean spoken = !merged && read.contains(i);
            row.get(i).lines().filter(line -> !line.isBlank()).forEach(line -> write(line, spoken, text));
        }
    }

    private static void write(String line, boolean spoken, StringBuilder text) {
        if (spoken) {
            PdfDocument.flush(new StringBuilder(line), text);
        } else {
            text.append("> ").append(WordParagraph.escaped(line)).append("\n\n");
        }
    }

    List<DocumentTable> tables() {
        return tables;
    }
}
