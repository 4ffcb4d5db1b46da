package org.bookholder.handoff.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.bookholder.handoff.pdf.PickupPdf.Entry;
import org.junit.jupiter.api.Test;

/** The printed list, read back from its file. */
final class PickupPdfTest {
    private static final Entry NOTED = new Entry(
            "12", "Every wheel begins with its hub.", "misread: said \"rim\"", "take 1 at 0:03.0", "a door slammed");
    private static final Entry BARE = new Entry("14", "The rim comes last.", "skipped", "", "");

    @Test
    void holdsEachLineWithWhatIsKnownOfIt() throws IOException {
        assertThat(text(List.of(NOTED, BARE)))
                .containsSubsequence(
                        "Wheels",
                        "2 lines to pick up",
                        "12",
                        "Every wheel begins with its hub.",
                        "misread: said \"rim\"",
                        "take 1 at 0:03.0",
                        "a door slammed",
                        "14",
                        "The rim comes last.",
                        "skipped");
    }

    @Test
    void saysHowManyLinesThereAre() throws IOException {
        assertThat(text(List.of())).contains("No line to pick up.");
        assertThat(text(List.of(BARE))).contains("1 line to pick up");
    }

    @Test
    void aLineAndWhatIsKnownOfItStayOnOnePage() throws IOException {
        List<Entry> many = IntStream.rangeClosed(1, 60)
                .mapToObj(i -> new Entry("" + i, "begin" + i + " of a line", "outcome" + i, "where" + i, "end" + i))
                .toList();
        try (PDDocument document = Loader.loadPDF(pdf(many))) {
            assertThat(document.getNumberOfPages()).isGreaterThan(2);
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                String text = stripper.getText(document);
                IntStream.rangeClosed(1, 60)
                        .forEach(i -> assertThat(text.matches("(?s).*\\bend" + i + "\\b.*"))
                                .isEqualTo(text.matches("(?s).*\\bbegin" + i + "\\b.*")));
            }
        }
    }

    @Test
    void namesItselfAndIsTheSameEachTime() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(List.of(NOTED)))) {
            assertThat(document.getDocumentInformation().getTitle()).isEqualTo("Pickups: Wheels");
            assertThat(document.getDocumentInformation().getCreator()).isEqualTo("Bookholder");
            assertThat(document.getDocumentInformation().getCreationDate().getTimeInMillis())
                    .isZero();
        }
        assertThat(pdf(List.of(NOTED))).isEqualTo(pdf(List.of(NOTED)));
    }

    private static String text(List<Entry> entries) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(entries))) {
            return new PDFTextStripper().getText(document);
        }
    }

    private static byte[] pdf(List<Entry> entries) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PickupPdf.write("Wheels", entries, out);
        return out.toByteArray();
    }
}
