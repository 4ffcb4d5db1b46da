package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import org.apache.poi.xwpf.usermodel.XWPFAbstractNum;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFNumbering;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.apache.poi.xwpf.usermodel.XWPFRun;
import org.apache.poi.xwpf.usermodel.XWPFStyle;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.AgeingFact;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.model.ScriptWord.Emphasis;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTAbstractNum;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTLvl;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTStyle;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.STNumberFormat;

final class WordDocumentTest {
    @TempDir
    private Path folder;

    @Test
    void paragraphsAreSpokenAndHeadingsAndBracketsAreNot() throws Exception {
        Script script = read(document -> {
            paragraph(document, "Reading a bent wheel").setStyle("Heading1");
            paragraph(document, "Hello. Buy [12](say:a dozen) of them, for [$12](check:2027-03).");
            paragraph(document, "[Hold up the wheel.]");
            paragraph(document, "2. Turn it * slowly_ #now");
            paragraph(document, "---");
            paragraph(document, "And <b>stop</b> [here], not there");
        });

        assertThat(script.title()).isEqualTo("Reading a bent wheel");
        assertThat(script.lines())
                .extracting(ScriptLine::text)
                .containsExactly(
                        "Hello.",
                        "Buy 12 of them, for $12.",
                        "2. Turn it * slowly_ #now",
                        "And <b>stop</b>, not there");
        assertThat(script.lines().get(1).words().get(1).spoken().get(0)).isEqualTo(List.of("a", "dozen"));
        assertThat(script.facts()).extracting(AgeingFact::text).containsExactly("$12");
        assertThat(script.elements())
                .filteredOn(Direction.class::isInstance)
                .extracting(ScriptElement::text)
                .containsExactly("Hold up the wheel.", "here");
    }

    /** As the styles "List Number" and "List Bullet" of word processors do it. */
    @Test
    void aListMayComeFromTheStyle() throws Exception {
        Script script = read(document -> {
            style(document, "ListBullet", null, list(document, STNumberFormat.BULLET));
            style(document, "ListNumber", null, list(document, STNumberFormat.DECIMAL));
            style(document, "ListNumberTight", "ListNumber", null);
            paragraph(document, "You need these.").setStyle("Normal");
            paragraph(document, "Flour").setStyle("ListBullet");
            paragraph(document, "Weigh it").setStyle("ListNumber");
            paragraph(document, "Mix it").setStyle("ListNumberTight");
            paragraph(document, "No item").setStyle("ListNumber");
            document.getParagraphArray(4).setNumID(BigInteger.ZERO);
        });
        assertThat(script.lines())
                .extracting(ScriptLine::text)
                .containsExactly("You need these.", "\u2022 Flour", "1. Weigh it", "2. Mix it", "No item");
    }

    private static BigInteger list(XWPFDocument document, STNumberFormat.Enum format) {
        CTAbstractNum kind = CTAbstractNum.Factory.newInstance();
        kind.setAbstractNumId(BigInteger.valueOf(format.intValue()));
        CTLvl level = kind.addNewLvl();
        level.setIlvl(BigInteger.ZERO);
        level.addNewNumFmt().setVal(format);
        XWPFNumbering numbering = document.createNumbering();
        return numbering.addNum(numbering.addAbstractNum(new XWPFAbstractNum(kind)));
    }

    private static void style(XWPFDocument document, String id, @Nullable String base, @Nullable BigInteger list) {
        CTStyle style = CTStyle.Factory.newInstance();
        style.setStyleId(id);
        style.addNewName().setVal(id);
        if (base != null) {
            style.addNewBasedOn().setVal(base);
        }
        if (list != null) {
            style.addNewPPr().addNewNumPr().addNewNumId().setVal(list);
        }
        document.createStyles().addStyle(new XWPFStyle(style));
    }

    @Test
    void keepsStressAndLineBreaks() throws Exception {
        Script script = read(document -> {
            XWPFParagraph paragraph = paragraph(document, "Turn it ");
            run(paragraph, "very ").setBold(true);
            run(paragraph, "slowly").setBold(true);
            XWPFRun last = run(paragraph, ", please.");
            last.addBreak();
            last.setText("Then stop.");
        });

        assertThat(script.lines())
                .extracting(ScriptLine::text)
                .containsExactly("Turn it very slowly, please.", "Then stop.");
        assertThat(script.lines().get(0).words())
                .filteredOn(word -> word.emphasis() == Emphasis.STRONG)
                .extracting(ScriptWord::written)
                .containsExactly("very", "slowly,");
    }

    @Test
    void aTablesSpokenColumnIsRead() throws Exception {
        Script script = read(document -> {
            XWPFTable table = document.createTable(2, 2);
            table.getRow(0).getCell(0).setText("Picture");
            table.getRow(0).getCell(1).setText("Narration");
            table.getRow(1).getCell(0).setText("Rim, close");
            table.getRow(1).getCell(1).setText("This is the rim.");
        });

        assertThat(script.lines()).extracting(ScriptLine::text).containsExactly("This is the rim.");
        assertThat(script.elements()).hasSize(2);
    }

    @Test
    void deletedTextIsLeftOut() throws Exception {
        Script script = read(document -> {
            XWPFParagraph paragraph = paragraph(document, "Keep this.");
            paragraph.getCTP().addNewDel().addNewR().addNewDelText().setStringValue(" Not this.");
            paragraph.getCTP().addNewIns().addNewR().addNewT().setStringValue(" And this.");
        });

        assertThat(script.lines()).extracting(ScriptLine::text).containsExactly("Keep this.", "And this.");
    }

    @Test
    void aFileThatIsNotADocumentIsReported() throws IOException {
        Path file = Files.write(folder.resolve("x.docx"), new byte[] {'P', 'K', 3, 4, 0, 0, (byte) 0xff, 0});
        assertThatThrownBy(() -> ScriptReader.read(file))
                .isInstanceOf(ProblemException.class)
                .hasMessage(file + ": this is not a DOCX document that can be read; save it anew as .docx without a "
                        + "password, or as Markdown or plain text");
        Files.write(file, new byte[0]);
        assertThatThrownBy(() -> ScriptReader.read(file)).isInstanceOf(ProblemException.class);
    }

    private Script read(Consumer<XWPFDocument> content) throws IOException, ProblemException {
        try (XWPFDocument document = new XWPFDocument();
                ByteArrayOutputStream out = new ByteArrayOutputStream()) {
            content.accept(document);
            document.write(out);
            return ScriptReader.read(Files.write(folder.resolve("lesson.docx"), out.toByteArray()));
        }
    }

    private static XWPFParagraph paragraph(XWPFDocument document, String text) {
        XWPFParagraph paragraph = document.createParagraph();
        run(paragraph, text);
        return paragraph;
    }

    private static XWPFRun run(XWPFParagraph paragraph, String text) {
        XWPFRun run = paragraph.createRun();
        run.setText(text);
        return run;
    }
}
