package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.List;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.bookholder.script.model.LeftOut;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/** Counts what a DOCX document holds beside its paragraphs and tables, none of which becomes a part of a script. */
final class WordLeftOut {
    private static final String WORD = "http://schemas.openxmlformats.org/wordprocessingml/2006/main";
    private static final String MATHS = "http://schemas.openxmlformats.org/officeDocument/2006/math";

    private final Document body;
    private final List<LeftOut> found = new ArrayList<>();

    private WordLeftOut(Document body) {
        this.body = body;
    }

    /** What is left out of a document, one entry for each kind. */
    static List<LeftOut> of(XWPFDocument document) {
        @Nullable Document body = document.getDocument().getDomNode().getOwnerDocument();
        WordLeftOut left =
                new WordLeftOut(body == null ? (Document) document.getDocument().getDomNode() : body);
        left.add(left.count(WORD, "del", "*"), "deleted passage", "tracked changes are read as accepted");
        left.add(left.count(WORD, "commentReference", "*"), "comment", "comments are not part of the script");
        left.add(left.count(WORD, "footnoteReference", "*"), "footnote", "footnotes are not read");
        left.add(left.count(WORD, "endnoteReference", "*"), "endnote", "endnotes are not read");
        left.add(left.count(WORD, "drawing", "*") + left.count(WORD, "pict", "*"), "picture or shape", "not shown");
        left.add(left.count(MATHS, "oMath", "*"), "equation", "write it in words");
        left.add(
                left.count(WORD, "tbl", "tc"), "table within a table", "its text is not read: take it out of the cell");
        long edges = document.getHeaderList().stream()
                        .filter(header -> !header.getText().isBlank())
                        .count()
                + document.getFooterList().stream()
                        .filter(footer -> !footer.getText().isBlank())
                        .count();
        left.add((int) edges, "page header or footer", "they are not part of the script");
        return left.found;
    }

    private void add(int count, String what, String why) {
        if (count > 0) {
            found.add(new LeftOut(0, count == 1 ? "1 " + what : count + " × " + what, why));
        }
    }

    /** How many elements of a name there are, in a parent of a name, or in any for "*". */
    private int count(String space, String name, String parent) {
        NodeList all = body.getElementsByTagNameNS(space, name);
        int count = 0;
        for (int i = 0; i < all.getLength(); i++) {
            Node above = all.item(i).getParentNode();
            if (parent.equals("*") || (above instanceof Element element && parent.equals(element.getLocalName()))) {
                count++;
            }
        }
        return count;
    }
}
