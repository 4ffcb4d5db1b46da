package org.bookholder.script.source;

import java.util.List;
import java.util.regex.Pattern;

/**
 * A script's text that is written in HTML although the name of its file does not say so.
 *
 * @param document the text as CommonMark, and what is not in it
 * @param lines for each line of that, the line of the text in HTML at which its paragraph begins, from 1
 */
record WebText(ConvertedDocument document, List<Integer> lines) {
    private static final Pattern ELEMENTS = Pattern.compile("(?i)</(?:p|h[1-6]|div|li|body)>|<br ?/?>");
    private static final Pattern PARAGRAPH = Pattern.compile("\\R[ \\t]*\\R\\s*");

    /** Behind this, a paragraph is one of a web page. */
    private static final Pattern MARK_UP =
            Pattern.compile("</?[A-Za-z][A-Za-z0-9]{0,12}[\\s/>].*|<!.*", Pattern.DOTALL);

    WebText {
        lines = List.copyOf(lines);
    }

    /** Whether a text is written in HTML: it has elements that hold text, and each of its paragraphs begins with mark-up. */
    static boolean isIn(String text) {
        return text.indexOf('<') >= 0
                && ELEMENTS.matcher(text).find()
                && PARAGRAPH
                        .splitAsStream(text.strip())
                        .allMatch(part -> MARK_UP.matcher(part).matches());
    }

    /** Line of the text in HTML for an index of a line of {@link #document}, from 0. */
    int line(int index) {
        return lines.isEmpty() ? 1 : lines.get(Math.min(index, lines.size() - 1));
    }
}
