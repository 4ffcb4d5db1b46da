package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;

/** Whatever of a file is neither spoken nor shown is told, with its line. */
final class LeftOutTest {
    @Test
    void eachPieceOfMarkdownThatIsNotReadIsTold() throws Exception {
        ExplainedScript read = ScriptReader.explain("""
            ---
            title: A wheel
            author: Somebody
            ---
            See [this](http://wheels.example) <b>now</b>.

            ***

            1. One
            2. Two

            ![the jar](jar.jpg) Go.

            :-)

            [ref]: http://other.example
            <!-- a note -->
            """, "l.md", Format.MARKDOWN);

        assertThat(read.leftOut())
                .extracting(LeftOut::sourceLine, LeftOut::what)
                .extracting(Object::toString)
                .containsExactly(
                        "(3, \"author:\")",
                        "(5, \"http://wheels.example\")",
                        "(5, \"<b>\")",
                        "(5, \"</b>\")",
                        "(7, \"a rule across the page\")",
                        "(12, \"jar.jpg\")",
                        "(14, \":-)\")",
                        "(16, \"http://other.example\")");
        assertThat(read.leftOut()).allMatch(left -> !left.why().isEmpty());
        assertThat(read.script().lines()).hasSize(4);
    }

    @Test
    void aTextWithNothingBesideItsWordsLeavesNothingOut() throws Exception {
        assertThat(ScriptReader.explain("One line.\n\n[A direction.]\n", "l.txt", Format.PLAIN_TEXT)
                        .leftOut())
                .isEmpty();
    }

    @Test
    void aDocumentsOtherContentIsReported() throws Exception {
        byte[] bytes = document();

        ConvertedDocument converted = ScriptReader.convert(bytes, "l.docx", Map.of());

        assertThat(converted.leftOut())
                .extracting(LeftOut::what)
                .containsExactly("Shot | Talk", "1 footnote", "1 table within a table");
        assertThat(converted.text())
                .startsWith("Hello there.\n")
                .contains("> Close up")
                .contains("\n\nTurn it slowly now.");
    }

    @Test
    void theColumnsOfATableCanBeChosen() throws Exception {
        byte[] bytes = document();

        DocumentTable table =
                ScriptReader.convert(bytes, "l.docx", Map.of()).tables().get(0);
        assertThat(table.columns())
                .containsExactly(new DocumentTable.Column("Shot", 3, false), new DocumentTable.Column("Talk", 5, true));

        ConvertedDocument chosen = ScriptReader.convert(bytes, "l.docx", Map.of(1, Set.of(0)));
        assertThat(chosen.text()).contains("\n\nClose up").contains("> Turn it slowly now.");
        assertThat(chosen.leftOut()).extracting(LeftOut::what).contains("Shot | Talk");
        assertThat(chosen.tables().get(0).columns())
                .extracting(DocumentTable.Column::spoken)
                .isEqualTo(List.of(true, false));
    }

    private static byte[] document() throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (XWPFDocument document = new XWPFDocument()) {
            document.createParagraph().createRun().setText("Hello there.");
            document.createFootnotes();
            document.getParagraphs().get(0).addFootnoteReference(document.createFootnote());
            XWPFTable table = document.createTable(2, 2);
            table.getRow(0).getCell(0).setText("Shot");
            table.getRow(0).getCell(1).setText("Talk");
            table.getRow(1).getCell(0).setText("Close up");
            table.getRow(1).getCell(1).setText("Turn it slowly now.");
            table.getRow(1).getCell(0).getCTTc().addNewTbl();
            document.write(bytes);
        }
        return bytes.toByteArray();
    }
}
