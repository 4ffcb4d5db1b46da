package org.bookholder.script.source;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.LeftOut;

/**
 * Takes the text out of a PDF as CommonMark, as well as it can be guessed: columns one after the other, rows joined to paragraphs, words
 * that were divided at the end of a row joined, tables by where their words stand, page numbers and what stands on each page left out.
 */
final class PdfDocument {
    private static final LeftOut WARNING = new LeftOut(
            0,
            "the look of the PDF",
            "a PDF holds no paragraphs and no tables: what belongs together was guessed, so read it through");

    private static final LeftOut TABLE = new LeftOut(
            0,
            "a table",
            "a PDF does not say where its columns are: what stands in one row may be read together; if this is a script in"
                    + " columns, export it as DOCX or ODT");

    private static final LeftOut COLUMNS = new LeftOut(
            0,
            "a table",
            "a PDF does not say where its columns are: they were found by where the words stand, so read it through; if they"
                    + " are wrong, export it as DOCX or ODT");

    /** So often at least the text goes on beside what stood before it on a page with a table. */
    private static final int BESIDE = 3;

    private static final Pattern PAGE_NUMBER =
            Pattern.compile("(?i)(?:page |- ?)?\\d{1,4}(?: ?(?:/|of) ?\\d{1,4})?(?: ?-)?");
    private static final Pattern ITEM = Pattern.compile("(?:[•‣◦▪–*-]|\\d{1,3}[.)])\\s+\\S.*");
    private static final Pattern DIVIDED = Pattern.compile("(?s).*\\p{Ll}{2,}[-\u00ad\u2010]");
    private static final Pattern ENDED = Pattern.compile("(?s).*[.!?:\u2026)\\]][\"'\u201d\u2019)\\]]?");
    private static final Pattern LABEL = Pattern.compile("\\[?\\p{Lu}[\\p{Lu} ]{1,20}(?:\\([^)]{1,30}\\))?[:\\]].*");
    private static final int FEW_PAGES = 3;
    private static final double HEADING = 1.15;
    private static final double SMALL = 0.92;
    private static final double RAISED = 0.75;
    private static final double FULL_ROW = 0.8;

    /** A row of a page: its text, the size of its letters in points, its page from 1, whether a wider gap stands above it, and the table that stands there instead. */
    private record Row(String text, double size, int page, boolean apart, List<List<String>> table) {}

    private PdfDocument() {}

    /** The document's text, and what is not in it. */
    static ConvertedDocument convert(byte[] bytes, String source, Map<Integer, Set<Integer>> columns)
            throws ProblemException {
        try (PDDocument document = Loader.loadPDF(bytes)) {
            List<LeftOut> leftOut = new ArrayList<>(List.of(WARNING));
            List<Row> rows = large(ofPages(rows(document, leftOut), document.getNumberOfPages(), leftOut), leftOut);
            if (rows.isEmpty()) {
                throw new ProblemException(
                        "there is no text in this PDF, only pictures of it",
                        source,
                        "export the script as DOCX from where it was written");
            }
            PdfTable tables = new PdfTable(columns, leftOut);
            return new ConvertedDocument(text(rows, tables), leftOut, tables.tables());
        } catch (IOException | RuntimeException e) {
            // The library finds damage in some places by whatever goes wrong there.
            throw new ProblemException(
                    "this is not a PDF that can be read",
                    source,
                    "export the script as DOCX, without a password, from where it was written",
                    e);
        }
    }

    /** The rows of all pages; a damaged page is left out. */
    private static List<Row> rows(PDDocument document, List<LeftOut> leftOut) throws IOException {
        Stripper stripper = new Stripper();
        int pages = document.getNumberOfPages();
        for (int page = 1; page <= pages; page++) {
            stripper.setStartPage(page);
            stripper.setEndPage(page);
            try {
                stripper.getText(document);
            } catch (IOException | RuntimeException e) {
                if (pages == 1) {
                    throw e;
                }
                stripper.row.setLength(0);
                leftOut.add(new LeftOut(0, "page " + page, "it is damaged and can't be read"));
            }
        }
        if (stripper.tables) {
            leftOut.add(TABLE);
        }
        if (stripper.rows.stream().anyMatch(row -> !row.table.isEmpty())) {
            leftOut.add(COLUMNS);
        }
        return stripper.rows;
    }

    /** The rows without page numbers and without those that stand on most pages. */
    private static List<Row> ofPages(List<Row> rows, int pages, List<LeftOut> leftOut) {
        Map<String, Integer> times = new HashMap<>();
        rows.stream()
                .map(Row::text)
                .filter(text -> !text.isEmpty())
                .forEach(text -> times.merge(text, 1, Integer::sum));
        List<Row> kept = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            Row row = rows.get(i);
            boolean edge = i == 0
                    || i + 1 == rows.size()
                    || rows.get(i - 1).page != row.page
                    || rows.get(i + 1).page != row.page;
            if (edge && PAGE_NUMBER.matcher(row.text).matches()) {
                leftOut.add(new LeftOut(0, row.text, "the number of a page"));
            } else if (pages >= FEW_PAGES && times.getOrDefault(row.text, 0) * 2 > pages) {
                leftOut.add(new LeftOut(0, ScriptBuilder.brief(row.text), "it stands on each page"));
            } else {
                kept.add(row);
            }
        }
        return kept;
    }

    /** The size of most letters; 0 if there are none. */
    private static double usual(List<Row> rows) {
        Map<Double, Integer> letters = new HashMap<>();
        rows.forEach(row ->
                letters.merge(row.size, row.text.length() + row.table.toString().length(), Integer::sum));
        return letters.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse(0.0);
    }

    /** The rows without small print, as notes at the foot of a page have it. */
    private static List<Row> large(List<Row> rows, List<LeftOut> leftOut) {
        List<Row> kept = new ArrayList<>();
        double usual = usual(rows);
        for (Row row : rows) {
            if (row.size < usual * SMALL && row.table.isEmpty()) {
                leftOut.add(new LeftOut(0, ScriptBuilder.brief(row.text), "small print, as notes have it"));
            } else {
                kept.add(row);
            }
        }
        return kept;
    }

    private static String text(List<Row> rows, PdfTable tables) {
        double usual = usual(rows);
        double widest = rows.stream().mapToInt(row -> row.text.length()).max().orElse(0);
        StringBuilder text = new StringBuilder();
        StringBuilder paragraph = new StringBuilder();
        int before = 0;
        for (Row row : rows) {
            if (!row.table.isEmpty()) {
                flush(paragraph, text);
                tables.add(row.table, text);
                continue;
            }
            tables.end(text);
            boolean heading = row.size > usual * HEADING;
            boolean ends = ENDED.matcher(paragraph).matches() && before < widest * FULL_ROW;
            if (heading
                    || ITEM.matcher(row.text).matches()
                    || LABEL.matcher(row.text).matches()
                    || (row.apart && !goesOn(paragraph))
                    || ends) {
                flush(paragraph, text);
            }
            if (heading) {
                text.append("# ").append(WordParagraph.escaped(row.text)).append("\n\n");
            } else {
                join(paragraph, row.text);
            }
            before = row.text.length();
        }
        flush(paragraph, text);
        tables.end(text);
        return text.toString();
    }

    /** Whether a paragraph breaks off within a sentence, as at the end of a column or a page. */
    private static boolean goesOn(StringBuilder paragraph) {
        return DIVIDED.matcher(paragraph).matches()
                || (!paragraph.isEmpty() && !ENDED.matcher(paragraph).matches());
    }

    /** Adds a row to a paragraph; a word that was divided at the end of the row before is joined. */
    static void join(StringBuilder paragraph, String row) {
        boolean divided = DIVIDED.matcher(paragraph).matches() && Character.isLowerCase(row.codePointAt(0));
        if (divided) {
            paragraph.setLength(paragraph.length() - 1);
        } else if (!paragraph.isEmpty()) {
            paragraph.append(' ');
        }
        paragraph.append(row);
    }

    /** Ends a paragraph, which may be an item of a list. */
    static void flush(StringBuilder paragraph, StringBuilder text) {
        String content = paragraph.toString().strip();
        paragraph.setLength(0);
        if (!content.isEmpty()) {
            boolean bullet = ITEM.matcher(content).matches() && !Character.isDigit(content.charAt(0));
            text.append(bullet ? "- " : "")
                    .append(WordParagraph.escaped(bullet ? content.substring(1).strip() : content))
                    .append("\n\n");
        }
    }

    /** Collects the rows of a document in the order in which they are stored, which is that of the columns. */
    private static final class Stripper extends PDFTextStripper {
        private final List<Row> rows = new ArrayList<>();
        private final StringBuilder row = new StringBuilder();
        private final List<PdfPage.Word> words = new ArrayList<>();
        private int pageBegins;
        private double size;
        private boolean apart;
        private boolean tables;
        private int beside;
        private double end;
        private double height;

        Stripper() {
            setParagraphStart("\u0001");
        }

        @Override
        protected void writeString(String text, List<TextPosition> positions) {
            double largest = positions.stream()
                    .mapToDouble(TextPosition::getFontSizeInPt)
                    .max()
                    .orElse(size);
            size = Math.max(row.isEmpty() ? 0 : size, largest);
            note(positions);
            // a raised figure is the mark of a note
            String marked = positions.stream()
                    .filter(position -> position.getFontSizeInPt() < size * RAISED)
                    .map(TextPosition::getUnicode)
                    .collect(Collectors.joining());
            boolean note = !row.isEmpty() && marked.matches("\\d{1,3}");
            String kept = note
                    ? positions.stream()
                            .filter(position -> position.getFontSizeInPt() >= size * RAISED)
                            .map(TextPosition::getUnicode)
                            .collect(Collectors.joining())
                    : text;
            row.append(kept);
            place(kept, positions, largest);
        }

        private void place(String word, List<TextPosition> positions, double large) {
            if (!positions.isEmpty() && !word.isBlank()) {
                TextPosition first = positions.get(0);
                words.add(new PdfPage.Word(
                        word.strip(), first.getXDirAdj(), end, first.getYDirAdj(), large, words.size()));
            }
        }

        /** Counts where the text goes on at the right: behind a gap in a row, or higher on the page than before. */
        private void note(List<TextPosition> positions) {
            if (positions.isEmpty()) {
                return;
            }
            TextPosition first = positions.get(0);
            TextPosition last = positions.get(positions.size() - 1);
            boolean gap = !row.isEmpty() && first.getXDirAdj() - end > size;
            boolean higher = row.isEmpty() && first.getYDirAdj() < height - size / 2;
            beside += gap || higher ? 1 : 0;
            end = last.getXDirAdj() + last.getWidthDirAdj();
            height = first.getYDirAdj();
        }

        @Override
        protected void writePageStart() {
            beside = 0;
            height = 0;
            words.clear();
            pageBegins = rows.size();
        }

        @Override
        protected void writeWordSeparator() {
            row.append(' ');
        }

        @Override
        protected void writeParagraphStart() throws IOException {
            endRow();
            apart = true;
            super.writeParagraphStart();
        }

        @Override
        protected void writeLineSeparator() {
            endRow();
        }

        @Override
        protected void writePageEnd() {
            endRow();
            List<PdfPage.Piece> pieces = PdfPage.pieces(words, beside >= BESIDE);
            tables |= pieces.isEmpty() && beside >= BESIDE;
            if (!pieces.isEmpty()) {
                rows.subList(pageBegins, rows.size()).clear();
                pieces.forEach(piece -> rows.add(
                        new Row(piece.text(), piece.size(), getCurrentPageNo(), piece.apart(), piece.table())));
            }
        }

        private void endRow() {
            String text = row.toString().replaceAll("[\\s\\p{Cc}]+", " ").strip();
            row.setLength(0);
            if (!text.isEmpty()) {
                rows.add(new Row(text, size, getCurrentPageNo(), apart, List.of()));
                apart = false;
            }
        }
    }
}
