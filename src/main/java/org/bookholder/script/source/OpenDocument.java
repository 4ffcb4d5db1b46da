package org.bookholder.script.source;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
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
            Map.entry("table:table-cell", "td"),
            Map.entry("table:covered-table-cell", "td"));

    /** What is not part of the text, and why. */
    private static final Map<String, String> LEFT_OUT = Map.of(
            "text:note", "notes are not read",
            "office:annotation", "comments are not part of the script",
            "text:tracked-changes", "tracked changes are read as accepted",
            "draw:text-box", "a text box is not read: put its text into a paragraph",
            "text:table-of-content", "a table of contents is not read",
            "math:math", "write it in words");

    private OpenDocument() {}

    /** Whether a file has the name of an ODT document. */
    static boolean isNamed(String source) {
        return source.toLowerCase(Locale.ROOT).endsWith(".odt");
    }

    /** The document's text, and what is not in it. */
    static ConvertedDocument convert(byte[] bytes, String source, Map<Integer, Set<Integer>> chosen)
            throws ProblemException {
        try {
            WordArchive.check(bytes, source);
            Document content = Jsoup.parse(new ByteArrayInputStream(content(bytes)), "UTF-8", "", Parser.xmlParser());
            List<LeftOut> leftOut = new ArrayList<>();
            Element body = content.getElementsByTag("office:text").first();
            if (body == null) {
                throw new IOException("no text");
            }
            LEFT_OUT.forEach((name, why) -> leaveOut(body, name, why, leftOut));
            body.getElementsByTag("text:h").forEach(heading -> heading.tagName("h2"));
            body.getElementsByTag("text:s").forEach(space -> space.text(" "));
            body.getElementsByTag("text:tab").forEach(tab -> tab.text(" "));
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

    private static void leaveOut(Element body, String name, String why, List<LeftOut> leftOut) {
        for (Element element : body.getElementsByTag(name)) {
            String what = element.text().isBlank() ? name.substring(name.indexOf(':') + 1) : element.text();
            leftOut.add(new LeftOut(0, ScriptBuilder.brief(what), why));
            element.remove();
        }
    }

    private static byte[] content(byte[] bytes) throws IOException {
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes))) {
            for (ZipEntry part = zip.getNextEntry(); part != null; part = zip.getNextEntry()) {
                if (part.getName().equals("content.xml")) {
                    return zip.readNBytes(WordArchive.LARGEST_TEXT);
                }
            }
        }
        throw new IOException("no content.xml");
    }
}
