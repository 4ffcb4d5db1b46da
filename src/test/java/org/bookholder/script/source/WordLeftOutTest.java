package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import org.apache.poi.wp.usermodel.HeaderFooterType;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.bookholder.script.model.LeftOut;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Node;

/** What of a DOCX document is told not to be in the script. Elements: ECMA-376, part 1, sections 17 and 22.1. */
final class WordLeftOutTest {
    private static final String WORD = "http://schemas.openxmlformats.org/wordprocessingml/2006/main";
    private static final String MATHS = "http://schemas.openxmlformats.org/officeDocument/2006/math";

    private final XWPFDocument document = new XWPFDocument();

    @AfterEach
    void close() throws IOException {
        document.close();
    }

    @Test
    void paragraphsAndTablesAreNotLeftOut() throws IOException {
        document.createParagraph().createRun().setText("Hello there.");
        document.createTable(1, 2);
        assertThat(leftOut()).isEmpty();
    }

    @Test
    void eachKindIsCountedAndHasItsReason() throws IOException {
        add(WORD, "del", 1);
        add(WORD, "commentReference", 2);
        add(WORD, "footnoteReference", 3);
        add(WORD, "endnoteReference", 4);
        add(MATHS, "oMath", 5);
        assertThat(leftOut())
                .containsExactly(
                        new LeftOut(0, "1 deleted passage", "tracked changes are read as accepted"),
                        new LeftOut(0, "2 × comment", "comments are not part of the script"),
                        new LeftOut(0, "3 × footnote", "footnotes are not read"),
                        new LeftOut(0, "4 × endnote", "endnotes are not read"),
                        new LeftOut(0, "5 × equation", "write it in words"));
    }

    @Test
    void picturesOfBothKindsCountTogether() throws IOException {
        add(WORD, "drawing", 2);
        add(WORD, "pict", 1);
        assertThat(leftOut()).containsExactly(new LeftOut(0, "3 × picture or shape", "not shown"));
    }

    @Test
    void onlyATableWithinACellIsLeftOut() throws IOException {
        XWPFTable table = document.createTable(1, 1);
        table.getRow(0).getCell(0).getCTTc().addNewTbl();
        assertThat(leftOut())
                .containsExactly(
                        new LeftOut(0, "1 table within a table", "its text is not read: take it out of the cell"));
    }

    @Test
    void headersAndFootersWithAnythingInThemAreCounted() throws IOException {
        document.createHeader(HeaderFooterType.FIRST);
        document.createFooter(HeaderFooterType.FIRST)
                .createParagraph()
                .createRun()
                .setText("  ");
        assertThat(leftOut()).isEmpty();
        document.createHeader(HeaderFooterType.DEFAULT)
                .createParagraph()
                .createRun()
                .setText("Lesson 1");
        assertThat(leftOut())
                .containsExactly(new LeftOut(0, "1 page header or footer", "they are not part of the script"));
        document.createFooter(HeaderFooterType.DEFAULT)
                .createParagraph()
                .createRun()
                .setText("Page");
        assertThat(leftOut()).extracting(LeftOut::what).containsExactly("2 × page header or footer");
    }

    /** What is left out of the document as it is read from its file. */
    private List<LeftOut> leftOut() throws IOException {
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        document.write(file);
        try (XWPFDocument read = new XWPFDocument(new ByteArrayInputStream(file.toByteArray()))) {
            return WordLeftOut.of(read);
        }
    }

    private void add(String space, String name, int count) {
        Node paragraph = document.createParagraph().getCTP().getDomNode();
        for (int i = 0; i < count; i++) {
            paragraph.appendChild(paragraph.getOwnerDocument().createElementNS(space, name));
        }
    }
}
