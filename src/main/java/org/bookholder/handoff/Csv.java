package org.bookholder.handoff;

import java.io.IOException;
import java.util.List;
import java.util.function.Supplier;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Writes tables as RFC 4180 specifies: commas, CRLF, doubled quotes. */
public final class Csv {
    private static final char BYTE_ORDER_MARK = '\ufeff';

    private Csv() {}

    /**
     * A table with a heading as a file in UTF-8. If it holds anything but ASCII it begins with a byte order mark, without
     * which spreadsheet programs take the letters for another encoding (common practice).
     */
    public static HandOffFile file(
            String name, List<String> heading, Supplier<? extends Iterable<? extends List<?>>> rows) {
        return HandOffFile.text(name, out -> {
            StringBuilder table = new StringBuilder();
            write(table, heading, rows.get());
            if (table.chars().anyMatch(c -> c > 0x7f)) {
                out.append(BYTE_ORDER_MARK);
            }
            out.append(table);
        });
    }

    static void write(Appendable out, List<String> heading, Iterable<? extends List<?>> rows) throws IOException {
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
