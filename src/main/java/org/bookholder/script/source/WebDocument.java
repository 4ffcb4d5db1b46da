package org.bookholder.script.source;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.LeftOut;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.Node;
import org.jsoup.nodes.TextNode;
import org.jsoup.parser.Parser;

/**
 * Converts a web page to CommonMark, as word processors export one. It keeps headings, quotes, lists, stress, line
 * breaks and tables. Comments, notes and struck text are left out.
 */
final class WebDocument {
    private static final Set<String> BLOCKS = Set.of(
            "address",
            "article",
            "aside",
            "blockquote",
            "body",
            "dd",
            "div",
            "dl",
            "dt",
            "figure",
            "footer",
            "h1",
            "h2",
            "h3",
            "h4",
            "h5",
            "h6",
            "header",
            "hr",
            "li",
            "main",
            "ol",
            "p",
            "pre",
            "section",
            "table",
            "ul");

    private static final Set<String> UNSEEN =
            Set.of("script", "style", "noscript", "template", "head", "title", "meta", "link", "nav");

    private static final int DEEPEST = 200;

    private final StringBuilder text = new StringBuilder();
    private final List<LeftOut> leftOut;
    private final List<DocumentTable> tables = new ArrayList<>();
    private final Map<Integer, Set<Integer>> chosen;
    private final StringBuilder inline = new StringBuilder();
    private final ListIndent indent = new ListIndent();
    private int lists;

    /** For each line of the text, the line of the page at which its paragraph begins; 0 where that is not known. */
    private final List<Integer> lines = new ArrayList<>();

    private int begun;

    private WebDocument(Map<Integer, Set<Integer>> chosen, List<LeftOut> leftOut) {
        this.chosen = chosen;
        this.leftOut = leftOut;
    }

    /** The page's text, and what is not in it; which columns of its tables are read as for a DOCX document. */
    static ConvertedDocument convert(byte[] bytes, String source, Map<Integer, Set<Integer>> chosen)
            throws ProblemException {
        try {
            return convert(
                    Jsoup.parse(new ByteArrayInputStream(bytes), null, "").body(), chosen, new ArrayList<>());
        } catch (IOException e) {
            throw new ProblemException("this web page cannot be read", source, "save it anew as UTF-8", e);
        }
    }

    /** A text in HTML that lies in no file of its own. */
    static WebText page(String html) {
        WebDocument document = new WebDocument(Map.of(), new ArrayList<>());
        document.children(
                Jsoup.parse(html, "", Parser.htmlParser().setTrackPosition(true))
                        .body(),
                "",
                0);
        document.paragraph("");
        return new WebText(
                new ConvertedDocument(document.text.toString(), document.leftOut, document.tables), document.lines);
    }

    /** The same of an element that holds a whole text; {@code leftOut} is what is known to be left out of it. */
    static ConvertedDocument convert(Element body, Map<Integer, Set<Integer>> chosen, List<LeftOut> leftOut) {
        WebDocument document = new WebDocument(chosen, leftOut);
        document.children(body, "", 0);
        document.paragraph("");
        return new ConvertedDocument(document.text.toString(), leftOut, document.tables);
    }

    /** Adds what is inside an element; {@code mark} stands before its paragraphs. */
    private void children(Element parent, String mark, int depth) {
        if (depth > DEEPEST) {
            leave(parent.text(), "it is nested too deep");
            return;
        }
        for (Node node : parent.childNodes()) {
            if (node instanceof TextNode words) {
                begin(words, words.getWholeText());
                inline.append(WordParagraph.escaped(words.text()));
            } else if (node instanceof Element element) {
                element(element, mark, depth + 1);
            }
        }
    }

    private void element(Element element, String mark, int depth) {
        String name = element.normalName();
        if (UNSEEN.contains(name)) {
            return;
        }
        if (element.attr("role").equals("doc-endnotes")) {
            leave(element.text().replace('\u21a9', ' ').replace('\ufe0e', ' '), "notes are not read");
            return;
        }
        if (!BLOCKS.contains(name)) {
            inline(element, name, mark, depth);
            return;
        }
        paragraph(mark);
        switch (name) {
            case "h1", "h2", "h3", "h4", "h5", "h6" -> paragraphOf(element, "# ", depth);
            case "blockquote", "pre", "aside" -> paragraphOf(element, "> ", depth);
            case "li" -> {
                lists++;
                paragraphOf(element, (mark.startsWith("> ") ? "> " : "") + itemMark(element), depth);
                lists--;
            }
            case "table" -> table(element, depth);
            case "hr" -> leave("a rule across the page", "it only separates paragraphs");
            default -> paragraphOf(element, mark, depth);
        }
    }

    private void paragraphOf(Element element, String mark, int depth) {
        children(element, mark, depth);
        paragraph(mark);
    }

    private static String itemMark(Element item) {
        Element list = item.parent();
        if (list == null || !list.normalName().equals("ol")) {
            return "- ";
        }
        int number = list.hasAttr("start") && list.attr("start").matches("\\d{1,6}")
                ? Integer.parseInt(list.attr("start"))
                : 1;
        for (Element before : list.children()) {
            if (before.equals(item)) {
                break;
            }
            number += before.normalName().equals("li") ? 1 : 0;
        }
        return number + ". ";
    }

    private void inline(Element element, String name, String mark, int depth) {
        String address = element.attr("href");
        if (name.equals("br")) {
            inline.append('\n');
        } else if (name.equals("img")) {
            leave(element.attr("alt").isBlank() ? "a picture" : element.attr("alt"), "pictures are not shown");
        } else if (Set.of("s", "strike", "del").contains(name)) {
            leave(element.text(), "it is struck through");
        } else if (element.attr("role").equals("doc-noteref")
                || address.startsWith("#cmnt")
                || address.startsWith("#ftnt")
                || address.startsWith("#_ftn")) {
            leave(element.text(), "the mark of a comment or a note");
        } else if (Set.of("b", "strong").contains(name)) {
            stressed(element, "**", mark, depth);
        } else if (Set.of("i", "em").contains(name)) {
            stressed(element, "*", mark, depth);
        } else {
            children(element, mark, depth);
        }
    }

    /** Stress marks must touch the words, so spaces stay outside them. */
    private void stressed(Element element, String stress, String mark, int depth) {
        String content = WordParagraph.escaped(element.text());
        boolean simple =
                element.select("br, img, s, del, strike, p, div, li, a").isEmpty() && !content.isBlank();
        if (simple) {
            begin(element, "");
            boolean spaced = Character.isWhitespace(element.wholeText().charAt(0));
            inline.append(spaced ? " " : "")
                    .append(stress)
                    .append(content.strip())
                    .append(stress);
            String whole = element.wholeText();
            inline.append(Character.isWhitespace(whole.charAt(whole.length() - 1)) ? " " : "");
        } else {
            children(element, mark, depth);
        }
    }

    private void table(Element table, int depth) {
        List<Element> rows = table.select("tr").stream()
                .filter(row -> table.equals(row.closest("table")))
                .toList();
        List<SortedMap<Integer, Element>> grid = WebTable.grid(rows);
        List<List<String>> texts = grid.stream().map(WebTable::texts).toList();
        int number = tables.size() + 1;
        SpokenColumns columns = chosen.containsKey(number)
                ? SpokenColumns.chosen(chosen.getOrDefault(number, Set.of()), texts)
                : SpokenColumns.of(number, texts, 0);
        leftOut.addAll(columns.notes());
        tables.add(DocumentTable.of(number, texts, columns.spoken()));
        for (int i = 0; i < rows.size(); i++) {
            if (i == 0 && columns.headed()) {
                leave(String.join(" | ", texts.get(0)), "the headings of a table");
                continue;
            }
            for (Map.Entry<Integer, Element> cell : grid.get(i).entrySet()) {
                paragraphOf(cell.getValue(), columns.spoken().contains(cell.getKey()) ? "" : "> ", depth);
            }
        }
    }

    /** Ends the paragraph that is being collected. */
    private void paragraph(String mark) {
        String content = inline.toString().strip();
        inline.setLength(0);
        if (!content.isBlank()) {
            boolean heading = mark.startsWith("#");
            boolean item = !heading && !mark.isEmpty() && !mark.startsWith("> ");
            String spaces = item ? indent.at(lists - 1) : "";
            if (!item) {
                indent.end();
            }
            String further = mark.startsWith("> ") ? "> " : spaces + " ".repeat(mark.length());
            String rows = content.replaceAll("[ \\t]*\\n[ \\t]*", heading ? " " : "\n" + further) + "\n\n";
            text.append(spaces).append(mark).append(rows);
            rows.chars().filter(c -> c == '\n').forEach(end -> lines.add(begun));
        }
    }

    /** Notes where the paragraph that is being collected begins. */
    private void begin(Node node, String written) {
        if (inline.toString().isBlank() && node.sourceRange().isTracked()) {
            String before = written.substring(
                    0, written.length() - written.stripLeading().length());
            begun = node.sourceRange().start().lineNumber()
                    + (int) before.chars().filter(c -> c == '\n').count();
        }
    }

    private void leave(String what, String why) {
        leave(leftOut, what, why);
    }

    /** Notes in {@code leftOut} what of a document is not in its text, unless it is blank. */
    static void leave(List<LeftOut> leftOut, String what, String why) {
        if (!what.isBlank()) {
            leftOut.add(new LeftOut(0, ScriptBuilder.brief(what.strip()), why));
        }
    }
}
