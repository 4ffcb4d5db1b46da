package org.bookholder.handoff;

import java.io.IOException;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Writes tables as RFC 4180 specifies: commas, CRLF, doubled quotes. */
public final class Csv {
    private Csv() {}

    /** Writes a table with a heading. */
    public static void write(Appendable out, List<String> heading, Iterable<? extends List<?>> rows)
            throws IOException {
        CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180);
        printer.printRecord(heading);
        for (List<?> row : rows) {
            printer.printRecord(row.stream().map(Csv::harmless).toList());
        }
    }

    /** A spreadsheet would evaluate a text that begins like a formula; a space before it keeps it a text. */
    private static Object harmless(Object cell) {
        boolean formula = cell instanceof String text && !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0;
        return formula ? " " + cell : cell;
    }
}
