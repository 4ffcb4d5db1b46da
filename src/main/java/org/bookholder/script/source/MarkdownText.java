package org.bookholder.script.source;

import java.util.regex.Pattern;
import org.commonmark.node.Code;
import org.commonmark.node.HardLineBreak;
import org.commonmark.node.HtmlInline;
import org.commonmark.node.Node;
import org.commonmark.node.SoftLineBreak;
import org.commonmark.node.Text;

/** The text of CommonMark's nodes. */
final class MarkdownText {
    private static final Pattern BREAK = Pattern.compile("(?i)<br\\s*/?>");

    private MarkdownText() {}

    /** Whether it is a line break in HTML. */
    static boolean isBreak(HtmlInline html) {
        return BREAK.matcher(html.getLiteral()).matches();
    }

    /** The text inside {@code node}, without mark-up and on one line. */
    static String plain(Node node) {
        StringBuilder text = new StringBuilder();
        for (Node child = node.getFirstChild(); child != null; child = child.getNext()) {
            if (child instanceof Text literal) {
                text.append(literal.getLiteral());
            } else if (child instanceof Code code) {
                text.append(code.getLiteral());
            } else if (child instanceof SoftLineBreak
                    || child instanceof HardLineBreak
                    || (child instanceof HtmlInline html && isBreak(html))) {
                text.append(' ');
            } else {
                text.append(plain(child));
            }
        }
        return text.toString();
    }
}
