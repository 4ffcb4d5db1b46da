package org.bookholder.script.source;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.apache.poi.ooxml.POIXMLException;
import org.apache.poi.xwpf.usermodel.IBodyElement;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.apache.poi.xwpf.usermodel.XWPFSDT;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.LeftOut;
import org.jspecify.annotations.Nullable;

/**
 * Converts a DOCX document to CommonMark. It keeps titles, headings, quotes, lists, stress and line breaks. Tables
 * and text boxes become directions, except for table columns that are read. Tracked deletions, hidden and struck text,
 * comments, notes, headers and footers are left out.
 */
final class WordDocument {
    private final StringBuilder text = new StringBuilder();
    private final Map<Integer, Set<Integer>> chosen;
    private final List<DocumentTable> tables = new ArrayList<>();
    private final List<LeftOut> leftOut = new ArrayList<>();
    /** How many items each list has had on each of its levels. */
    private final Map<BigInteger, NavigableMap<Integer, Integer>> items = new HashMap<>();

    private final ListIndent indent = new ListIndent();

    private WordDocument(Map<Integer, Set<Integer>> chosen) {
        this.chosen = chosen;
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

    /** Adds an element. What a library throws at a malformed one is not documented; it costs that element only. */
    private void add(IBodyElement element, XWPFDocument document) {
        try {
            if (element instanceof XWPFParagraph paragraph) {
                add(paragraph, style(paragraph, document));
            } else if (element instanceof XWPFTable table) {
                add(table);
            } else if (element instanceof XWPFSDT control) {
                control.getContent().getText().lines().forEach(row -> block("", WordParagraph.escaped(row)));
            }
        } catch (RuntimeException e) {
            leftOut.add(new LeftOut(0, "a part of the document", "it is damaged and can't be read: look for it there"));
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
        String plain = WordParagraph.marked(paragraph, leftOut).strip();
        if (style.startsWith("heading") || style.equals("title")) {
            block("# ", plain.replace("\n", " "));
        } else if (style.contains("quote") || style.contains("caption")) {
            block("> ", plain);
        } else {
            item(plain, mark(paragraph));
        }
        for (String box : WordParagraph.boxes(paragraph)) {
            block("> ", WordParagraph.escaped(box));
            leftOut.add(new LeftOut(0, ScriptBuilder.brief(box), "a text box is shown as a direction, not read"));
        }
    }

    /** The mark of an item of a list, with a space; empty for an ordinary paragraph. */
    private String mark(XWPFParagraph paragraph) {
        Optional<WordNumbering> found = WordNumbering.of(paragraph);
        if (found.isEmpty()) {
            return "";
        }
        WordNumbering item = found.get();
        NavigableMap<Integer, Integer> counts = items.computeIfAbsent(item.list(), none -> new TreeMap<>());
        // an item begins the lists below it anew
        counts.tailMap(item.level(), false).clear();
        String spaces = paragraph.getText().isBlank() ? "" : indent.at(item.level());
        return item.counted() ? spaces + counts.merge(item.level(), 1, Integer::sum) + ". " : spaces + "- ";
    }

    private void item(String content, String mark) {
        if (!content.isBlank()) {
            if (mark.isEmpty()) {
                indent.end();
            }
            text.append(mark)
                    .append(content.replace("\n", "\n" + " ".repeat(mark.length())))
                    .append("\n\n");
        }
    }

    /** Adds a table as a direction, except for the columns that are read. */
    private void add(XWPFTable table) {
        WordTable cells = WordTable.of(table, leftOut);
        int number = tables.size() + 1;
        SpokenColumns columns = cells.columns(number, chosen);
        leftOut.addAll(columns.notes());
        if (columns.headed()) {
            String row = String.join(" | ", cells.texts().get(0));
            leftOut.add(new LeftOut(0, ScriptBuilder.brief(row), "the headings of a table"));
        }
        for (List<WordTable.Cell> row :
                cells.rows().subList(columns.headed() ? 1 : 0, cells.rows().size())) {
            for (WordTable.Cell cell : row) {
                String mark = cells.isSpoken(cell, columns.spoken()) ? "" : "> ";
                cell.paragraphs().forEach(paragraph -> block(mark, paragraph));
            }
        }
        tables.add(DocumentTable.of(number, cells.texts(), columns.spoken()));
    }

    private void block(String mark, String content) {
        if (!content.isBlank()) {
            indent.end();
            text.append(mark).append(content.replace("\n", "\n" + mark)).append("\n\n");
        }
    }
}
