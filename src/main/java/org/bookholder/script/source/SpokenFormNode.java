package org.bookholder.script.source;

import org.commonmark.node.CustomNode;
import org.commonmark.node.Node;
import org.commonmark.parser.InlineParserContext;
import org.commonmark.parser.beta.LinkInfo;
import org.commonmark.parser.beta.LinkProcessor;
import org.commonmark.parser.beta.LinkResult;
import org.commonmark.parser.beta.Position;
import org.commonmark.parser.beta.Scanner;

/**
 * {@code [written](say:spoken)} in a script. A space between the brackets is allowed. CommonMark does not allow spaces
 * in a link's destination, so the brackets are read here before CommonMark reads them.
 */
final class SpokenFormNode extends CustomNode {
    private static final String OPENING = "(say:";

    private final String said;

    private SpokenFormNode(String said) {
        this.said = said;
    }

    /** What is said, as the author wrote it. */
    String said() {
        return said;
    }

    /** Reads these links and ignores all others. */
    static LinkProcessor processor() {
        return SpokenFormNode::process;
    }

    private static LinkResult process(LinkInfo link, Scanner scanner, InlineParserContext context) {
        if (link.marker() != null) {
            return LinkResult.none();
        }
        scanner.setPosition(link.afterTextBracket());
        scanner.next(' ');
        if (!scanner.next(OPENING)) {
            return LinkResult.none();
        }
        Position start = scanner.position();
        int open = 1;
        while (scanner.hasNext() && scanner.peek() != '\n') {
            char c = scanner.peek();
            open += c == '(' ? 1 : c == ')' ? -1 : 0;
            if (open == 0) {
                String said = scanner.getSource(start, scanner.position()).getContent();
                scanner.next();
                Node node = new SpokenFormNode(said.strip());
                return LinkResult.wrapTextIn(node, scanner.position());
            }
            scanner.next();
        }
        return LinkResult.none();
    }
}
