package org.bookholder.script.source;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.TextNode;
import org.jspecify.annotations.Nullable;

/** The paragraphs, lists and tables of rich text, as elements of a web page. */
final class RichTextBody {
    private static final Pattern NUMBERED = Pattern.compile("\\s*\\(?(\\d{1,3})[.)]\\s*");
    private static final Pattern WRITTEN_MARK = Pattern.compile("\\s*(?:\\d{1,3}[.)]|[•‣◦▪–-])\\s+(?=\\S)");
    private static final int DEEPEST_HEADING = 6;
    private static final int DEEPEST_LIST = 8;

    /** How far each level of a list is usually set in, in twentieths of a point. */
    private static final int STEP = 360;

    private final Element body = new Element("body");
    private Element block = new Element("p");
    private @Nullable Element row;
    private @Nullable Element table;
    private String mark = "";
    private boolean heading;
    private boolean small;
    private boolean inTable;
    private boolean hanging;
    private int level;
    private int setIn;

    /** Whatever has been taken in. */
    Element element() {
        return body;
    }

    /**
     * Adds text to the paragraph; a line feed breaks the line.
     *
     * @param large whether it is written like a heading; a paragraph is one if all of it is
     */
    void text(String text, boolean bold, boolean italic, boolean large) {
        small |= !large && !text.isBlank();
        String[] lines = text.split("\n", -1);
        for (int i = 0; i < lines.length; i++) {
            if (i > 0) {
                block.appendElement("br");
            }
            if (!lines[i].isEmpty()) {
                String tag = bold ? "b" : italic ? "i" : "span";
                Element last = block.lastElementChild();
                if (last != null
                        && last.normalName().equals(tag)
                        && last.nextSibling() == null
                        && last.childNodeSize() == 1
                        && last.childNode(0) instanceof TextNode before) {
                    before.text(before.getWholeText() + lines[i]);
                } else {
                    block.appendElement(tag).appendChild(new TextNode(lines[i]));
                }
            }
        }
    }

    /** The bullet or number before the paragraph. */
    void mark(String written) {
        mark = written;
    }

    /** The paragraph is as any other, until something else is said. */
    void plain() {
        heading = false;
        inTable = false;
        hanging = false;
        level = -1;
        setIn = 0;
    }

    /** The level of the list that the paragraph belongs to, from 0. */
    void level(int number) {
        level = number;
    }

    /** How far the paragraph is set in, in twentieths of a point. */
    void setIn(int twips) {
        setIn = twips;
    }

    /** Whether its first row stands out, as that of an item. */
    void hanging(boolean out) {
        hanging = out;
    }

    /** The paragraph is a heading of this level, from 0. */
    void heading(int level) {
        heading = level >= 0 && level < DEEPEST_HEADING;
    }

    /** The paragraph is in a table. */
    void inTable() {
        inTable = true;
    }

    /** Ends a paragraph. */
    void paragraph() {
        if (inTable) {
            block.appendElement("br");
            return;
        }
        table = null;
        if (!block.text().isBlank()) {
            takeWrittenMark();
            Matcher number = NUMBERED.matcher(mark);
            if (heading || !small) {
                body.appendChild(block.tagName("h2"));
            } else if (mark.isBlank()) {
                body.appendChild(block);
            } else {
                Element place = body;
                for (int i = 0; i < depth(); i++) {
                    place = place.appendElement("ul").appendElement("li");
                }
                Element list = place.appendElement(number.matches() ? "ol" : "ul");
                if (number.matches()) {
                    list.attr("start", number.group(1));
                }
                list.appendChild(block.tagName("li"));
            }
        }
        begin();
    }

    /** Begins the next paragraph; its level and how far it is set in stay until {@link #plain}. */
    private void begin() {
        block = new Element("p");
        mark = "";
        small = false;
    }

    private int depth() {
        int depth = level >= 0 ? level : setIn / STEP - 1;
        return Math.max(0, Math.min(depth, DEEPEST_LIST));
    }

    /** A bullet or number that stands in the text of a paragraph whose first row stands out is its mark. */
    private void takeWrittenMark() {
        Element first = block.firstElementChild();
        if (!mark.isBlank() || !hanging || first == null || !(first.childNode(0) instanceof TextNode text)) {
            return;
        }
        Matcher written = WRITTEN_MARK.matcher(text.getWholeText());
        if (written.lookingAt()) {
            mark = written.group();
            text.text(text.getWholeText().substring(written.end()));
        }
    }

    /** Ends a cell of a table. */
    void cell() {
        if (row == null) {
            row = new Element("tr");
        }
        row.appendChild(block.tagName("td"));
        begin();
    }

    /** Ends a row of a table. */
    void row() {
        if (row == null) {
            return;
        }
        if (table == null) {
            table = body.appendElement("table");
        }
        table.appendChild(row);
        row = null;
    }
}
