package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.math.BigInteger;
import java.util.List;
import java.util.Map;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Scripts in columns, as they are usual for camera work, and what else documents hold. */
class ScriptTableTest {
    private static List<String> shown(ExplainedScript read) {
        return read.script().elements().stream()
                .map(element -> (element instanceof Direction ? "> " : "") + element.text())
                .toList();
    }

    private static ExplainedScript markdown(String text) throws ProblemException {
        return ScriptReader.explain(text, "l.md", Format.MARKDOWN);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Script",
                "SCRIPT",
                "Voiceover",
                "Voice-over",
                "VO",
                "V.O.",
                "Dialogue",
                "Host",
                "Text",
                "Audio",
                "Narration",
                "What I say",
                "Spoken words",
                "**Narrator**"
            })
    void theColumnUnderAHeadingOfTheVoiceIsRead(String heading) throws ProblemException {
        assertThat(shown(markdown("""
            | On-screen text | %s |
            |---|---|
            | A long caption over the picture of the jar | Look here. [Turn] It is hot. |
            | Close up | Wait.<br>Go on. |
            """.formatted(heading))))
                .containsExactly(
                        "> A long caption over the picture of the jar",
                        "Look here.",
                        "> Turn",
                        "It is hot.",
                        "> Close up",
                        "Wait.",
                        "Go on.");
    }

    /** CommonMark 0.31.2, 4.6: a block of HTML ends at a blank line, so that each row is a block of its own. */
    @Test
    void aTableInHtmlMayHaveBlankLines() throws ProblemException {
        assertThat(shown(markdown("""
            <!-- <table> as it was -->

            <table>
            <tr><th>Video</th><th>Audio</th></tr>

            <tr><td>The jar</td><td>Look here.<br>Go on</td></tr>

            <tr><td>The lid</td><td>Close it.</td></tr>
            </table>

            That was all.
            """)))
                .containsExactly(
                        "> as it was", "> The jar", "Look here.", "Go on", "> The lid", "Close it.", "That was all.");
    }

    @Test
    void aTableInHtmlAroundMarkdownIsMarkUp() throws ProblemException {
        ExplainedScript read = markdown("<table><tr><td>\n\nLook here.\n\n</td></tr></table>\n");
        assertThat(shown(read)).containsExactly("Look here.");
        assertThat(read.leftOut()).noneMatch(left -> left.what().startsWith("table 1"));
    }

    @Test
    void aColumnOfThingsIsNotReadThoughTheVoiceMayBeCalledSo() throws ProblemException {
        assertThat(shown(markdown("Hi.\n\n| Anchor | Holds |\n|---|---|\n| Plug | 5 kg |\n| Hook | 9 kg |\n")))
                .containsExactly("Hi.", "> Anchor", "> Holds", "> Plug", "> 5 kg", "> Hook", "> 9 kg");
        assertThat(shown(markdown("| Anchor | Tape |\n|---|---|\n| It opens its doors today. | The yard |\n")))
                .containsExactly("It opens its doors today.", "> The yard");
    }

    @Test
    void everyLineOfATableInHtmlStandsWhereTheTableBegins() throws ProblemException {
        String table = "<table><tr><th>Video</th><th>Audio</th></tr>"
                + "<tr><td>The jar</td><td>Look<br>here<br>now</td></tr></table>";
        assertThat(markdown("Hello.\n\n" + table).script().lines())
                .extracting(ScriptLine::sourceLine)
                .containsExactly(1, 3, 3, 3);
    }

    @Test
    void withoutSuchAHeadingTheColumnWithMostWordsIsReadAndThatIsSaid() throws ProblemException {
        ExplainedScript read = markdown("| A | B |\n|---|---|\n| Jar | Look at this jar now. |\n");

        assertThat(shown(read)).containsExactly("> Jar", "Look at this jar now.");
        assertThat(read.leftOut()).extracting(LeftOut::what).containsExactly("table 1: A | B", "A | B");
        assertThat(read.leftOut().get(0).why()).startsWith("column 2 is read, because it holds the most words");
    }

    @Test
    void aTableOfFiguresIsShownAndThatIsSaid() throws ProblemException {
        ExplainedScript read = markdown("See this.\n\n| Size | Weight |\n|---|---|\n| 10 | 5 kg |\n");

        assertThat(shown(read)).containsExactly("See this.", "> Size", "> Weight", "> 10", "> 5 kg");
        assertThat(read.leftOut()).extracting(LeftOut::what).containsExactly("table 1: Size | Weight");
    }

    @Test
    void aDocumentIsReadAsItIsSeen() throws Exception {
        ConvertedDocument read = ScriptReader.convert(
                document(document -> {
                    XWPFParagraph first = document.createParagraph();
                    first.createRun().setText("Seen.");
                    first.createRun().setText(" Struck.");
                    first.getRuns().get(1).setStrikeThrough(true);
                    first.createRun().setText(" Hidden.");
                    first.getRuns().get(2).setVanish(true);
                    first.getCTP()
                            .addNewSdt()
                            .addNewSdtContent()
                            .addNewR()
                            .addNewT()
                            .setStringValue(" Filled in.");
                    first.getCTP().addNewMoveFrom().addNewR().addNewT().setStringValue("Moved.");
                    XWPFTable table = document.createTable(3, 3);
                    table.getRow(0).getCell(0).setText("No.");
                    table.getRow(0).getCell(1).setText("Video");
                    table.getRow(0).getCell(2).setText("VO");
                    table.getRow(1).getCell(0).setText("1");
                    table.getRow(1).getCell(1).setText("The jar");
                    table.getRow(1).getCell(2).setText("Here it is.");
                    table.getRow(2).removeCell(2);
                    table.getRow(2)
                            .getCell(0)
                            .getCTTc()
                            .addNewTcPr()
                            .addNewGridSpan()
                            .setVal(BigInteger.TWO);
                    table.getRow(2).getCell(0).setText("Wide");
                    table.getRow(2).getCell(1).setText("There it goes.");
                }),
                "l.docx",
                Map.of());

        assertThat(shown(markdown(read.text())))
                .containsExactly("Seen.", "Filled in.", "> 1", "> The jar", "Here it is.", "> Wide", "There it goes.");
        assertThat(read.leftOut()).extracting(LeftOut::what).contains("Struck.", "Hidden.", "No. | Video | VO");
        assertThat(read.text()).doesNotContain("Moved");
    }

    private interface Content {
        void addTo(XWPFDocument document);
    }

    private static byte[] document(Content content) throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (XWPFDocument document = new XWPFDocument()) {
            content.addTo(document);
            document.write(bytes);
        }
        return bytes.toByteArray();
    }
}
