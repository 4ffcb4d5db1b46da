package org.bookholder.script.source;

import java.util.List;
import org.bookholder.script.model.LeftOut;

/**
 * A document as CommonMark.
 *
 * @param text the text
 * @param leftOut what of the document is not in the text
 * @param tables its tables
 */
public record ConvertedDocument(String text, List<LeftOut> leftOut, List<DocumentTable> tables) {
    /** Copies the lists. */
    public ConvertedDocument {
        leftOut = List.copyOf(leftOut);
        tables = List.copyOf(tables);
    }
}
