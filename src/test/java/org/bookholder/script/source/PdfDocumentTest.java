package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.Test;

final class PdfDocumentTest {
    /** As a scanner makes it. */
    @Test
    void picturesOfPagesWithNumbersHaveNoText() throws IOException {
        byte[] scanned = pdf("1");
        assertThatThrownBy(() -> ScriptReader.convert(scanned, "a.pdf", Map.of()))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("there is no text in this PDF");
    }

    private static byte[] pdf(String text) throws IOException {
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage();
            document.addPage(page);
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                content.beginText();
                content.setFont(new PDType1Font(Standard14Fonts.FontName.HELVETICA), 12);
                content.newLineAtOffset(300, 30);
                content.showText(text);
                content.endText();
            }
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            document.save(bytes);
            return bytes.toByteArray();
        }
    }
}
