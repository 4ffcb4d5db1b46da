package org.bookholder.script.source;

import java.util.Set;
import org.bookholder.script.normalize.Latex;
import org.commonmark.node.Text;
import org.commonmark.parser.beta.InlineContentParser;
import org.commonmark.parser.beta.InlineContentParserFactory;
import org.commonmark.parser.beta.InlineParserState;
import org.commonmark.parser.beta.ParsedInline;
import org.commonmark.parser.beta.Position;
import org.commonmark.parser.beta.Scanner;

/** Keeps a formula between dollar signs as it is written: its backslashes, stars and lines below are no mark-up, and one in double signs may lie over several lines. */
final class FormulaParser implements InlineContentParser {
    /** Makes such parsers. */
    static final class Factory implements InlineContentParserFactory {
        @Override
        public Set<Character> getTriggerCharacters() {
            return Set.of('$');
        }

        @Override
        public InlineContentParser create() {
            return new FormulaParser();
        }
    }

    @Override
    public ParsedInline tryParse(InlineParserState state) {
        Scanner scanner = state.scanner();
        Position start = scanner.position();
        boolean displayed = scanner.next("$$");
        while (scanner.hasNext() && (displayed || scanner.peek() != '\n')) {
            scanner.next();
        }
        String rest = scanner.getSource(start, scanner.position()).getContent().replace('\n', ' ');
        int end = Latex.end(rest, 0);
        if (end < 0) {
            return ParsedInline.none();
        }
        scanner.setPosition(start);
        for (int i = 0; i < end; i++) {
            scanner.next();
        }
        return ParsedInline.of(new Text(rest.substring(0, end)), scanner.position());
    }
}
