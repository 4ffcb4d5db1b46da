package org.bookholder.handoff.pdf;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Calendar;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;

/**
 * The pickup list as pages to print: for each line a box to tick, the whole line, what was said, and where to listen.
 */
public final class PickupPdf {
    private static final float TITLE = 18;
    private static final float TEXT = 12;
    private static final float SMALL = 9.5f;
    private static final float BOX = 11;
    private static final float INDENT = 62;
    private static final float BETWEEN = 14;

    private PickupPdf() {}

    /**
     * A line to record again.
     *
     * @param number its number
     * @param text the whole line
     * @param outcome its outcome and what was said
     * @param where where to listen
     * @param notes notes that people wrote; may be empty
     */
    public record Entry(String number, String text, String outcome, String where, String notes) {}

    /** Writes the pages. */
    public static void write(String title, List<Entry> entries, OutputStream out) throws IOException {
        try (PDDocument document = new PDDocument();
                PdfPage page = new PdfPage(document)) {
            PDDocumentInformation about = new PDDocumentInformation();
            about.setTitle("Pickups: " + title);
            about.setCreator("Bookholder");
            document.setDocumentInformation(about);
            // The same list always produces the same file.
            document.setDocumentId(0L);
            about.setCreationDate(epoch());
            page.block(TITLE, true, 0, title);
            page.space(4);
            page.block(SMALL, false, 0, heading(entries.size()));
            page.rule();
            for (Entry entry : entries) {
                add(page, entry);
            }
            page.finish();
            document.save(out);
        }
    }

    private static void add(PdfPage page, Entry entry) throws IOException {
        float height = page.height(TEXT, INDENT, entry.text())
                + page.height(SMALL, INDENT, entry.outcome())
                + page.height(SMALL, INDENT, entry.where())
                + (entry.notes().isEmpty() ? 0 : page.height(SMALL, INDENT, entry.notes()));
        page.keepTogether(height);
        page.box(BOX);
        page.label(TEXT, BOX + 8, INDENT - 10, entry.number());
        page.block(TEXT, false, INDENT, entry.text());
        page.block(SMALL, true, INDENT, entry.outcome());
        page.block(SMALL, false, INDENT, entry.where());
        if (!entry.notes().isEmpty()) {
            page.block(SMALL, false, INDENT, entry.notes());
        }
        page.space(BETWEEN);
    }

    private static String heading(int count) {
        return count == 0 ? "No line to pick up." : count + (count == 1 ? " line" : " lines") + " to pick up";
    }

    private static Calendar epoch() {
        Calendar epoch = Calendar.getInstance(TimeZone.getTimeZone("UTC"), Locale.ROOT);
        epoch.setTimeInMillis(0);
        return epoch;
    }
}
