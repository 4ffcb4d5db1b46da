package org.bookholder.script.source;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.LeftOut;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.parser.Parser;

/**
 * Converts an ODT document to CommonMark: its content is XML (OASIS OpenDocument 1.3, part 3) whose elements are those of
 * a web page by other names.
 */
final class OpenDocument {
    private static final Map<String, String> NAMES = Map.ofEntries(
            Map.entry("text:p", "p"),
            Map.entry("text:list", "ul"),
            Map.entry("text:list-item", "li"),
            Map.entry("text:span", "span"),
            Map.entry("text:line-break", "br"),
            Map.entry("table:table", "table"),
            Map.entry("table:table-row", "tr"),
            Map.entry("table:table-cell", "td"));

    private static final Pattern HEADING = Pattern.compile("Title|Heading(?:_20_\\d{1,2})?");

    /** What is not part of the text, and why. */
    private static final Map<String, String> LEFT_OUT = Map.of(
            "text:note", "notes are not read",
            "office:annotation", "comments are not part of the script",
            "text:tracked-changes", "tracked changes are read as accepted",
            "draw:text-box", "a text box is not read: put its text into a paragraph",
            "text:table-of-content", "a table of contents is not read",
            "table:covered-table-cell", "a merged cell covers it",
            "math:math", "write it in words");

    /** The part of the archive that holds the text. */
    private static final String CONTENT = "content.xml";

    /** No more elements than this are put in for others that are repeated. */
    private static final int MOST_REPEATED = 20_000;

    private OpenDocument() {}

    /** The document's text, and what is not in it. */
    static ConvertedDocument convert(byte[] bytes, String source, Map<Integer, Set<Integer>> chosen)
            throws ProblemException {
        try {
            WordArchive.check(bytes, source, CONTENT::equals);
            Document content = Jsoup.parse(new ByteArrayInputStream(content(bytes)), "UTF-8", "", Parser.xmlParser());
            List<LeftOut> leftOut = new ArrayList<>();
            Element body = content.getElementsByTag("office:text").first();
            if (body == null) {
                throw new IOException("no text");
            }
            body.getElementsByTag("table:covered-table-cell").stream()
                    .filter(cell -> cell.text().isBlank())
                    .toList()
                    .forEach(Element::remove);
            LEFT_OUT.forEach((name, why) -> leaveOut(body, name, why, leftOut));
            body.getElementsByTag("text:h").forEach(heading -> heading.tagName("h2"));
            Set<String> headings = headingStyles(content);
            body.getElementsByTag("text:p").stream()
                    .filter(paragraph -> headings.contains(paragraph.attr("text:style-name")))
                    .toList()
                    .forEach(paragraph -> paragraph.tagName("h2"));
            body.getElementsByTag("text:s").forEach(space -> space.text(" "));
            body.getElementsByTag("text:tab").forEach(tab -> tab.text(" "));
            body.getElementsByTag("table:table-cell").forEach(cell -> {
                cell.attr("rowspan", cell.attr("table:number-rows-spanned"));
                cell.attr("colspan", cell.attr("table:number-columns-spanned"));
            });
            repeat(body, "table:table-cell", "table:number-columns-repeated");
            repeat(body, "table:table-row", "table:number-rows-repeated");
            Set<String> numbered = levels(content, "number");
            Set<String> bulleted = levels(content, "bullet");
            body.getElementsByTag("text:list").stream()
                    .filter(list -> isNumbered(list, numbered, bulleted))
                    .toList()
                    .forEach(list -> list.tagName("ol"));
            NAMES.forEach((name, web) -> body.getElementsByTag(name).forEach(element -> element.tagName(web)));
            return WebDocument.convert(body, chosen, leftOut);
        } catch (IOException e) {
            throw new ProblemException(
                    "this is not an ODT document that can be read",
                    source,
                    "save it anew without a password, or as .docx, Markdown or plain text",
                    e);
        }
    }

    /**
     * Puts in cells or rows as often as they are said to stand there (OASIS OpenDocument 1.3, part 3,
     * table:number-columns-repeated): programs write those that follow each other and are alike only once. Empty ones at the
     * end separate nothing.
     */
    private static void repeat(Element body, String name, String attribute) {
        int added = 0;
        for (Element element : body.getElementsByTag(name)) {
            String written = element.attr(attribute);
            int times = written.matches("[1-9]\\d{0,5}") ? Math.min(Integer.parseInt(written), WebTable.WIDEST) : 1;
            boolean needless =
                    element.nextElementSibling() == null && element.text().isBlank();
            int size = times == 1 || needless ? 0 : element.getAllElements().size();
            for (int i = 1; i < times && !needless && added + size <= MOST_REPEATED; i++) {
                element.after(element.clone());
                added += size;
            }
        }
    }

    /** The styles of titles and headings, and those that the document derives from them: some programs mark headings by these alone. */
    private static Set<String> headingStyles(Document content) {
        Set<String> styles = content.getElementsByTag("style:style").stream()
                .filter(style ->
                        HEADING.matcher(style.attr("style:parent-style-name")).matches())
                .map(style -> style.attr("style:name"))
                .collect(Collectors.toCollection(HashSet::new));
        content.getElementsByTag("text:p").stream()
                .map(paragraph -> paragraph.attr("text:style-name"))
                .filter(style -> HEADING.matcher(style).matches())
                .forEach(styles::add);
        return styles;
    }

    /** Some programs number the levels of a style in a way of their own: then its first level says what the list is. */
    private static boolean isNumbered(Element list, Set<String> numbered, Set<String> bulleted) {
        String style = style(list);
        String level = style + "/" + depth(list);
        return numbered.contains(level) || (!bulleted.contains(level) && numbered.contains(style + "/1"));
    }

    /** The levels of list styles of a kind, as style/level. */
    private static Set<String> levels(Document content, String kind) {
        return content.getElementsByTag("text:list-level-style-" + kind).stream()
                .filter(level -> level.parent() != null)
                .map(level -> level.parents().get(0).attr("style:name") + "/" + level.attr("text:level"))
                .collect(Collectors.toSet());
    }

    /** The style of a list, or of the list that it lies in. */
    private static String style(Element list) {
        return Stream.concat(Stream.of(list), list.parents().stream())
                .map(element -> element.attr("text:style-name"))
                .filter(name -> !name.isEmpty())
                .findFirst()
                .orElse("");
    }

    private static long depth(Element list) {
        return 1
                + list.parents().stream()
                        .filter(element -> Set.of("text:list", "ol").contains(element.tagName()))
                        .count();
    }

    private static void leaveOut(Element body, String name, String why, List<LeftOut> leftOut) {
        for (Element element : body.getElementsByTag(name)) {
            Element note = element.getElementsByTag("text:note-body").first();
            String text = note == null ? element.text() : note.text();
            String what = text.isBlank() ? name.substring(name.indexOf(':') + 1) : text;
            leftOut.add(new LeftOut(0, ScriptBuilder.brief(what), why));
            element.remove();
        }
    }

    private static byte[] content(byte[] bytes) throws IOException {
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes))) {
            for (ZipEntry part = zip.getNextEntry(); part != null; part = zip.getNextEntry()) {
                if (part.getName().equals(CONTENT)) {
                    return zip.readNBytes(WordArchive.LARGEST_TEXT);
                }
            }
        }
        throw new IOException("no content.xml");
    }
}
