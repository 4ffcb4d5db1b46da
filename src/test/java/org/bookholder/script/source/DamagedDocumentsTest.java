package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.LeftOut;
import org.bookholder.testing.Damage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A damaged document is read as far as it can be, or refused in one line; it never costs more than that. */
@Timeout(value = 60, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
final class DamagedDocumentsTest {
    private static final Path DOCUMENTS = Path.of("src/test/resources/documents");
    private static final int TIMES = 150;
    private static final long SEED = 320;

    @ParameterizedTest
    @ValueSource(strings = {"lo-columns.rtf", "pandoc-kettle.rtf", "pandoc-talk.html", "lo-kettle.pdf"})
    void isReadOrRefusedInOneLine(String name) throws IOException {
        byte[] whole = Files.readAllBytes(DOCUMENTS.resolve(name));
        Damage damage = new Damage(SEED);
        int read = 0;
        for (int i = 0; i < TIMES; i++) {
            read += isRead(damage.of(whole, name.endsWith(".rtf") || name.endsWith(".html")), name) ? 1 : 0;
        }
        assertThat(read).as("read in spite of the damage").isPositive();
    }

    @ParameterizedTest
    @ValueSource(strings = {"pandoc-mixed.odt", "pandoc-talk.docx"})
    void anArchiveWithADamagedTextIsReadOrRefusedInOneLine(String name) throws IOException {
        byte[] whole = Files.readAllBytes(DOCUMENTS.resolve(name));
        Damage damage = new Damage(SEED);
        int read = 0;
        for (int i = 0; i < TIMES; i++) {
            read += isRead(damage.insideArchive(whole), name) ? 1 : 0;
            isRead(damage.of(whole, false), name);
        }
        assertThat(read).as("read in spite of the damage").isPositive();
    }

    /** What stands before and behind a damaged part is still there. */
    @Test
    void aMalformedPartCostsItselfOnly() throws ProblemException {
        String rtf = "{\\rtf1 The first line.\\par {\\pict\\wmetafile8 00zz\\bin9999999 }\\par"
                + " \\u99999999? \\'zz The second one.\\par }}}} The last line.\\par";
        assertThat(text(rtf)).contains("The first line.", "The second one.");
        assertThat(text("{\\rtf1 Before.\\par " + "{".repeat(5000) + " Inside.\\par"))
                .contains("Before.");
    }

    @Test
    void anArchiveWhosePartsHaveNoNamesIsRefusedInOneLine() throws IOException {
        byte[] bytes = Files.readAllBytes(DOCUMENTS.resolve("pandoc-mixed.odt"));
        int name = new String(bytes, StandardCharsets.ISO_8859_1).indexOf("styles.xml");
        bytes[name] = (byte) 0xff;
        assertThat(isRead(bytes, "mixed.odt")).isFalse();
        assertThat(isRead(bytes, "mixed.docx")).isFalse();
    }

    /** The text of an ODT document lies in one part; its styles and its settings are not read. */
    @Test
    void damageOutsideTheTextCostsNothing() throws IOException, ProblemException {
        ByteArrayOutputStream damaged = new ByteArrayOutputStream();
        try (ZipInputStream in = new ZipInputStream(Files.newInputStream(DOCUMENTS.resolve("pandoc-mixed.odt")));
                ZipOutputStream out = new ZipOutputStream(damaged)) {
            for (ZipEntry part = in.getNextEntry(); part != null; part = in.getNextEntry()) {
                out.putNextEntry(new ZipEntry(part.getName()));
                out.write(
                        part.getName().equals("meta.xml")
                                ? "<meta><open>".getBytes(StandardCharsets.UTF_8)
                                : in.readAllBytes());
                out.closeEntry();
            }
        }
        assertThat(ScriptReader.parse(damaged.toByteArray(), "mixed.odt").lines())
                .hasSameSizeAs(
                        ScriptReader.read(DOCUMENTS.resolve("pandoc-mixed.odt")).lines());
    }

    /** The library of PDFs refuses a matrix without limits by an exception that is no user's error. */
    @Test
    void aDamagedPageOfAPdfCostsItselfOnly() throws IOException, ProblemException {
        String large = "9".repeat(37) + ".0";
        String scaled = large + " 0 0 " + large + " 0 0 cm ";
        byte[] two = pdf(shown("The hub is in the middle."), scaled + scaled + shown("Lost."));
        ConvertedDocument read = ScriptReader.convert(two, "a.pdf", Map.of());
        assertThat(read.text()).contains("The hub is in the middle.").doesNotContain("Lost.");
        assertThat(read.leftOut()).extracting(LeftOut::what).contains("page 2");
        assertThat(isRead(pdf(scaled + scaled + shown("Lost.")), "a.pdf")).isFalse();
    }

    private static String shown(String text) {
        return "BT /F1 12 Tf 40 40 Td (" + text + ") Tj ET";
    }

    /** A PDF with pages of this content. */
    private static byte[] pdf(String... pages) throws IOException {
        try (PDDocument document = new PDDocument();
                ByteArrayOutputStream out = new ByteArrayOutputStream()) {
            for (String content : pages) {
                PDPage page = new PDPage();
                PDResources resources = new PDResources();
                resources.put(COSName.getPDFName("F1"), new PDType1Font(Standard14Fonts.FontName.HELVETICA));
                page.setResources(resources);
                page.setContents(
                        new PDStream(document, new ByteArrayInputStream(content.getBytes(StandardCharsets.US_ASCII))));
                document.addPage(page);
            }
            document.save(out);
            return out.toByteArray();
        }
    }

    private static String text(String rtf) throws ProblemException {
        return ScriptReader.convert(rtf.getBytes(StandardCharsets.US_ASCII), "a.rtf", Map.of())
                .text();
    }

    private static boolean isRead(byte[] bytes, String name) {
        try {
            ScriptReader.parse(bytes, name);
            return true;
        } catch (ProblemException e) {
            assertThat(e.getMessage().lines()).hasSize(1);
            assertThat(e.remedy()).isNotBlank();
            return false;
        }
    }
}
