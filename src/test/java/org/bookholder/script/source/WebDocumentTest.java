package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Web pages as word processors export them, and ODT documents (OASIS OpenDocument 1.3, part 3). */
class WebDocumentTest {
    private static List<String> shown(ConvertedDocument document) throws ProblemException {
        return ScriptReader.parse(document.text(), "l.md", Format.MARKDOWN).elements().stream()
                .map(element -> (element instanceof Direction ? "> " : "") + element.text())
                .toList();
    }

    private static ConvertedDocument page(String html) throws ProblemException {
        return ScriptReader.convert(html.getBytes(StandardCharsets.UTF_8), "l.html", Map.of());
    }

    @Test
    void aPageIsReadAsItIsSeen() throws ProblemException {
        ConvertedDocument page = page("""
            <html><head><title>No</title><style>p {}</style></head><body>
            <h1>The <b>hive</b></h1>
            <p><span>Look&nbsp;at *this* <b>very </b>old</span> <s>new</s> hive.<sup><a href="#cmnt1">[a]</a></sup>
            [Hold it up]<br>Go on.</p>
            <ol start="3"><li><p>Open it.</p></li><li>Close it.</li></ol><ul><li>a lid</li></ul>
            <blockquote>Smile.</blockquote>
            <table><tr><td>Picture</td><td>VO</td></tr><tr><td>Jar</td><td><p>Here it is.</p></td></tr></table>
            <script>no()</script></body></html>
            """);

        assertThat(shown(page))
                .containsExactly(
                        "Look at *this* very old hive.",
                        "> Hold it up",
                        "Go on.",
                        "3. Open it.",
                        "4. Close it.",
                        "• a lid",
                        "> Smile.",
                        "> Jar",
                        "Here it is.");
        assertThat(page.text()).startsWith("# The **hive**");
        assertThat(page.leftOut()).extracting(LeftOut::what).containsExactly("new", "[a]", "Picture | VO");
        assertThat(page.tables().get(0).columns())
                .extracting(DocumentTable.Column::spoken)
                .containsExactly(false, true);
    }

    @Test
    void anOdtDocumentIsReadLikeAPage() throws Exception {
        byte[] bytes = odt("""
            <text:h>The hive</text:h><text:p>Look here.<text:note><text:p>A note.</text:p></text:note>
            <text:span>Then</text:span><text:s/>wait.<text:line-break/>Go on.</text:p>
            <text:list><text:list-item><text:p>a lid</text:p></text:list-item></text:list>
            <table:table><table:table-row><table:table-cell><text:p>Shot</text:p></table:table-cell>
            <table:table-cell><text:p>Dialogue</text:p></table:table-cell></table:table-row>
            <table:table-row><table:table-cell><text:p>Jar</text:p></table:table-cell>
            <table:table-cell><text:p>Here it is.</text:p></table:table-cell></table:table-row></table:table>
            """);

        ConvertedDocument document = ScriptReader.convert(bytes, "l.odt", Map.of());

        assertThat(shown(document))
                .containsExactly("Look here.", "Then wait.", "Go on.", "• a lid", "> Jar", "Here it is.");
        assertThat(document.leftOut()).extracting(LeftOut::what).containsExactly("A note.", "Shot | Dialogue");
    }

    /** Cells that are alike stand once in the file: OASIS OpenDocument 1.3, part 3, table:number-columns-repeated. */
    @Test
    void repeatedCellsOfAnOdtTableKeepTheOthersInTheirColumns() throws Exception {
        byte[] bytes = odt("""
            <table:table><table:table-row><table:table-cell><text:p>Shot</text:p></table:table-cell>
            <table:table-cell><text:p>Props</text:p></table:table-cell>
            <table:table-cell><text:p>Dialogue</text:p></table:table-cell></table:table-row>
            <table:table-row><table:table-cell table:number-columns-repeated="2"/>
            <table:table-cell><text:p>Here it is.</text:p></table:table-cell>
            <table:table-cell table:number-columns-repeated="16000"/></table:table-row>
            <table:table-row table:number-rows-repeated="2"><table:table-cell table:number-columns-repeated="2"><text:p>Jar</text:p>
            </table:table-cell><table:table-cell><text:p>Again.</text:p></table:table-cell></table:table-row></table:table>
            """);

        assertThat(shown(ScriptReader.convert(bytes, "l.odt", Map.of())))
                .containsExactly("Here it is.", "> Jar", "> Jar", "Again.", "> Jar", "> Jar", "Again.");
    }

    @ParameterizedTest
    @EnumSource(Format.class)
    void aTextInHtmlIsReadAsAPageWhateverItsFileIsCalled(Format format) throws Exception {
        ExplainedScript read = ScriptReader.explain("""
            ---
            pace: 120
            ---
            <!DOCTYPE html>
            <html><head><title>Bees</title></head><body>
            <h1>The dance</h1>
            <p>Bees <b>dance</b>.</p>
            <p>
            They sing.<br>
            And rest. [beat]</p></body></html>
            """, "l", format);

        assertThat(read.script().title()).isEqualTo("The dance");
        assertThat(read.script().elements())
                .extracting(element -> element.sourceLine() + " " + element.text())
                .containsExactly("7 Bees dance.", "9 They sing.", "10 And rest.", "10 beat");
        assertThat(read.leftOut()).extracting(LeftOut::what).containsExactly("HTML");
    }

    @Test
    void markdownWithSomeHtmlInItStaysMarkdown() throws Exception {
        ExplainedScript read =
                ScriptReader.explain("<div>A note.</div>\n\nBees *dance*.\n\n<p>Go.</p>\n", "l.md", Format.MARKDOWN);

        assertThat(read.script().elements())
                .extracting(element -> element.text())
                .containsExactly("A note.", "Bees dance.", "Go.");
        assertThat(read.script().lines()).hasSize(1);
        assertThat(read.leftOut()).extracting(LeftOut::what).doesNotContain("HTML");
    }

    @Test
    void aFileThatIsNoDocumentIsNamed() {
        assertThatThrownBy(() -> ScriptReader.convert(new byte[] {1, 2}, "l.odt", Map.of()))
                .hasMessageContaining("not an ODT document that can be read");
        String deep = "<div>".repeat(100_000) + "Hello.";
        assertThatThrownBy(() -> ScriptReader.parse(page(deep).text(), "l.md", Format.MARKDOWN))
                .hasMessageContaining("the script is empty");
    }

    private static byte[] odt(String text) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry("content.xml"));
            zip.write(("<office:document-content xmlns:office=\"o\" xmlns:text=\"t\" xmlns:table=\"b\"><office:body>"
                            + "<office:text>" + text + "</office:text></office:body></office:document-content>")
                    .getBytes(StandardCharsets.UTF_8));
        }
        return bytes.toByteArray();
    }
}
