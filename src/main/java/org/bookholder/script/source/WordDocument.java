package org.bookholder.script.source;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.poi.ooxml.POIXMLException;
import org.apache.poi.xwpf.usermodel.IBodyElement;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.apache.poi.xwpf.usermodel.XWPFRun;
import org.apache.poi.xwpf.usermodel.XWPFSDT;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.apache.poi.xwpf.usermodel.XWPFTableCell;
import org.apache.poi.xwpf.usermodel.XWPFTableRow;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.LeftOut;
import org.jspecify.annotations.Nullable;

/**
 * Converts a DOCX document to CommonMark. It keeps titles, headings, quotes, stress and line breaks. Paragraphs in
 * square brackets and tables become directions, except for table columns whose heading says that they are spoken.
 * Tracked deletions, comments, notes, headers and footers are left out.
 */
final class WordDocument {
    private static final Pattern SPOKEN_COLUMN =
            Pattern.compile("(?i)\\b(audio|sound|voice|narration|narrator|spoken|speech|words|says?|presenter)\\b");
    /** Headings of columns are short. */
    private static final int HEADING_WORDS = 4;

    private static final Pattern OURS = Pattern.compile("\\[[^\\[\\]\\n]*]\\((?:say|check):[^)\\n]*\\)");
    private static final Pattern SPECIAL = Pattern.compile("[\\\\`*_\\[\\]<>#&|~]");

    /** A line that CommonMark would read as a rule, or as turning the line above it into a heading. */
    private static final Pattern UNDERLINE = Pattern.compile("(?m)^(?=(?:-+|=+)\\s*$)");

    private final StringBuilder text = new StringBuilder();
    private final Map<Integer, Set<Integer>> chosen;
    private final List<DocumentTable> tables = new ArrayList<>();
    private final List<LeftOut> leftOut = new ArrayList<>();

    private WordDocument(Map<Integer, Set<Integer>> chosen) {
        this.chosen = chosen;
    }

    /** Whether a file has the name of a DOCX document. */
    static boolean isNamed(String source) {
        return source.toLowerCase(Locale.ROOT).endsWith(".docx");
    }

    /**
     * The document's text.
     *
     * @throws ProblemException as {@link #convert}
     */
    static String text(byte[] bytes, String source) throws ProblemException {
        return convert(bytes, source, Map.of()).text();
    }

    /**
     * The document's text, and what is not in it.
     *
     * @param chosen for tables, by their numbers from 1, which columns are spoken, from 0; the others by their headings
     * @throws ProblemException if it is not a DOCX document, is protected by a password, is damaged, or is too large
     *     unpacked
     */
    static ConvertedDocument convert(byte[] bytes, String source, Map<Integer, Set<Integer>> chosen)
            throws ProblemException {
        try {
            WordArchive.check(bytes, source);
            return convert(bytes, chosen);
        } catch (IOException | POIXMLException | IllegalArgumentException | IllegalStateException e) {
            throw new ProblemException(
                    "this is not a DOCX document that can be read",
                    source,
                    "save it anew as .docx without a password, or as Markdown or plain text",
                    e);
        }
    }

    private static ConvertedDocument convert(byte[] bytes, Map<Integer, Set<Integer>> chosen) throws IOException {
        try (XWPFDocument document = new XWPFDocument(new ByteArrayInputStream(bytes))) {
            WordDocument reader = new WordDocument(chosen);
            for (IBodyElement element : document.getBodyElements()) {
                reader.add(element, document);
            }
            reader.leftOut.addAll(WordLeftOut.of(document));
            return new ConvertedDocument(reader.text.toString(), reader.leftOut, reader.tables);
        }
    }

    private void add(IBodyElement element, XWPFDocument document) {
        if (element instanceof XWPFParagraph paragraph) {
            add(paragraph, style(paragraph, document));
        } else if (element instanceof XWPFTable table) {
            add(table);
        } else if (element instanceof XWPFSDT control) {
            control.getContent().getText().lines().forEach(row -> block("", escaped(row)));
        }
    }

    private static String style(XWPFParagraph paragraph, XWPFDocument document) {
        @Nullable String id = paragraph.getStyle();
        if (id == null) {
            return "";
        }
        var style = document.getStyles() == null ? null : document.getStyles().getStyle(id);
        String name = style == null || style.getName() == null ? id : style.getName();
        return name.toLowerCase(Locale.ROOT);
    }

    private void add(XWPFParagraph paragraph, String style) {
        String marked = marked(paragraph);
        String plain = marked.strip();
        boolean bracketed = plain.startsWith("\\[") && plain.indexOf("\\]") == plain.length() - 2;
        if (style.startsWith("heading") || style.equals("title")) {
            block("# ", plain.replace("\n", " "));
        } else if (bracketed) {
            block("> ", plain.substring(2, plain.length() - 2));
        } else {
            block(style.contains("quote") ? "> " : "", plain);
        }
    }

    /** Adds a table as a direction, except for the columns that were chosen or whose heading says that they are spoken. */
    private void add(XWPFTable table) {
        List<XWPFTableRow> rows = table.getRows();
        List<XWPFTableCell> heading = rows.isEmpty() ? List.of() : rows.get(0).getTableCells();
        Set<Integer> said = IntStream.range(0, heading.size())
                .filter(i -> isSpoken(heading.get(i)))
                .boxed()
                .collect(Collectors.toSet());
        Set<Integer> spoken = chosen.getOrDefault(tables.size() + 1, said);
        boolean headed = !said.isEmpty() || (!spoken.isEmpty() && rows.size() > 1 && looksLikeHeadings(heading));
        if (headed) {
            String row = heading.stream().map(XWPFTableCell::getText).collect(Collectors.joining(" | "));
            leftOut.add(new LeftOut(0, ScriptBuilder.brief(row), "the headings of a table"));
        }
        List<XWPFTableRow> body = headed ? rows.subList(1, rows.size()) : rows;
        for (XWPFTableRow row : body) {
            List<XWPFTableCell> cells = row.getTableCells();
            for (int i = 0; i < cells.size(); i++) {
                for (XWPFParagraph paragraph : cells.get(i).getParagraphs()) {
                    block(spoken.contains(i) ? "" : "> ", marked(paragraph).strip());
                }
            }
        }
        tables.add(described(tables.size() + 1, rows, spoken));
    }

    private static boolean looksLikeHeadings(List<XWPFTableCell> cells) {
        return cells.stream().noneMatch(cell -> words(cell) > HEADING_WORDS);
    }

    private static DocumentTable described(int number, List<XWPFTableRow> rows, Set<Integer> spoken) {
        List<DocumentTable.Column> columns = new ArrayList<>();
        int width =
                rows.stream().mapToInt(row -> row.getTableCells().size()).max().orElse(0);
        for (int i = 0; i < width; i++) {
            int column = i;
            List<XWPFTableCell> cells = rows.stream()
                    .filter(row -> column < row.getTableCells().size())
                    .map(row -> row.getTableCells().get(column))
                    .toList();
            columns.add(new DocumentTable.Column(
                    ScriptBuilder.brief(cells.get(0).getText().strip()),
                    cells.stream().mapToInt(WordDocument::words).sum(),
                    spoken.contains(i)));
        }
        return new DocumentTable(number, columns);
    }

    private static int words(XWPFTableCell cell) {
        String text = cell.getText().strip();
        return text.isEmpty() ? 0 : text.split("\\s+").length;
    }

    private static boolean isSpoken(XWPFTableCell cell) {
        return SPOKEN_COLUMN.matcher(cell.getText()).find();
    }

    private void block(String mark, String content) {
        if (!content.isBlank()) {
            text.append(mark).append(content.replace("\n", "\n" + mark)).append("\n\n");
        }
    }

    /** A paragraph's text with its stress; neighbouring runs with the same stress are joined. */
    private static String marked(XWPFParagraph paragraph) {
        StringBuilder marked = new StringBuilder();
        StringBuilder piece = new StringBuilder();
        String stress = "";
        for (XWPFRun run : paragraph.getRuns()) {
            if (run.getCTR().sizeOfDelTextArray() == 0) {
                String own = run.isBold() ? "**" : run.isItalic() ? "*" : "";
                if (!own.equals(stress)) {
                    close(marked, piece, stress);
                    stress = own;
                }
                piece.append(run.text());
            }
        }
        close(marked, piece, stress);
        return marked.toString();
    }

    /** Ends a stressed run; stress marks must touch the words, so spaces stay outside them. */
    private static void close(StringBuilder marked, StringBuilder piece, String stress) {
        String content = escaped(piece.toString());
        String core = content.strip();
        if (stress.isEmpty() || core.isEmpty() || core.contains("\n")) {
            marked.append(content);
        } else {
            int start = content.indexOf(core);
            marked.append(content, 0, start)
                    .append(stress)
                    .append(core)
                    .append(stress)
                    .append(content.substring(start + core.length()));
        }
        piece.setLength(0);
    }

    /**
     * The text with a backslash before everything that CommonMark would read as mark-up, except spoken forms and ageing
     * facts.
     */
    private static String escaped(String plain) {
        String even = plain.replace("\r", "").replace('\t', ' ').replace('\u000b', '\n');
        StringBuilder escaped = new StringBuilder();
        Matcher ours = OURS.matcher(even);
        int at = 0;
        while (ours.find()) {
            escaped.append(SPECIAL.matcher(even.substring(at, ours.start())).replaceAll("\\\\$0"));
            escaped.append(ours.group());
            at = ours.end();
        }
        escaped.append(SPECIAL.matcher(even.substring(at)).replaceAll("\\\\$0"));
        return UNDERLINE.matcher(escaped).replaceAll("\\\\");
    }
}
