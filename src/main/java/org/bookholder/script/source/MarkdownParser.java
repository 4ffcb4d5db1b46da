package org.bookholder.script.source;

import java.util.List;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.parser.IncludeSourceSpans;
import org.commonmark.parser.Parser;

/** Makes parsers of CommonMark with tables, spoken forms and formulae, which know where in the file each part stands. */
final class MarkdownParser {
    private MarkdownParser() {}

    static Parser make() {
        return Parser.builder()
                .includeSourceSpans(IncludeSourceSpans.BLOCKS_AND_INLINES)
                .maxOpenBlockParsers(ScriptLimits.DEEPEST)
                .maxInlineNesting(ScriptLimits.DEEPEST)
                .linkProcessor(SpokenFormNode.processor())
                .customInlineContentParserFactory(new FormulaParser.Factory())
                .extensions(List.of(TablesExtension.create()))
                .build();
    }
}
