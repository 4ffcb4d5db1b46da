package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.Test;

/** Documents that are small on disk and would take all memory, or the whole stack, when they are unpacked. */
final class WordArchiveTest {
    private static final String REMEDY = "; save its text alone as a new .docx, or as Markdown or plain text";
    private static final String BODY =
            "<w:document xmlns:w=\"http://schemas.openxmlformats.org/wordprocessingml/2006/main\"><w:body>%s"
                    + "</w:body></w:document>";

    private interface Parts {
        void write(ZipOutputStream zip) throws IOException;
    }

    @Test
    void aTextThatUnpacksToMuchMoreIsRefused() throws IOException {
        assertThat(problem(zip -> part(zip, "word/document.xml", WordArchive.LARGEST_TEXT + 1L)))
                .hasMessage("l.docx: this document is too large for a script"
                        + " (its word/document.xml has over 6 MB unpacked)" + REMEDY);
    }

    @Test
    void picturesThatUnpackToMuchMoreAreRefusedAfterTheFirstMegabytes() throws IOException {
        assertThat(problem(zip -> {
                    part(zip, "word/media/1.png", WordArchive.MOST_UNPACKED / 2);
                    part(zip, "word/media/2.png", WordArchive.MOST_UNPACKED);
                }))
                .hasMessage("l.docx: this document is too large for a script (it has over 64 MB unpacked)" + REMEDY);
    }

    @Test
    void thousandsOfPartsAreRefused() throws IOException {
        assertThat(problem(zip -> {
                    for (int i = 0; i <= WordArchive.MOST_PARTS; i++) {
                        part(zip, "word/media/" + i, 0);
                    }
                }))
                .hasMessage("l.docx: this document is too large for a script (it has over 5,000 parts)" + REMEDY);
    }

    @Test
    void tablesThatAreNestedThousandsDeepAreRefused() throws IOException {
        String deep = "<w:tbl><w:tr><w:tc>".repeat(5_000) + "</w:tc></w:tr></w:tbl>".repeat(5_000);
        assertThat(problem(zip -> document(zip, BODY.formatted(deep))))
                .hasMessage("l.docx: this document is too large for a script (its parts are nested over 200 deep)"
                        + REMEDY);
    }

    @Test
    void entitiesAreNotUnfolded() throws IOException {
        StringBuilder text = new StringBuilder("<!DOCTYPE w:document [<!ENTITY a0 \"haha\">");
        for (int i = 1; i < 12; i++) {
            text.append("<!ENTITY a" + i + " \"" + ("&a" + (i - 1) + ";").repeat(10) + "\">");
        }
        text.append("]>").append(BODY.formatted("<w:p><w:r><w:t>&a11;</w:t></w:r></w:p>"));
        assertThat(problem(zip -> document(zip, text.toString())))
                .hasMessage("l.docx: this is not a DOCX document that can be read;"
                        + " save it anew as .docx without a password, or as Markdown or plain text");
    }

    private static ProblemException problem(Parts parts) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.setLevel(Deflater.BEST_SPEED);
            parts.write(zip);
        }
        return catchThrowableOfType(
                ProblemException.class, () -> WordDocument.convert(bytes.toByteArray(), "l.docx", Map.of()));
    }

    private static void document(ZipOutputStream zip, String text) throws IOException {
        zip.putNextEntry(new ZipEntry("word/document.xml"));
        zip.write(text.getBytes(StandardCharsets.UTF_8));
        zip.closeEntry();
    }

    /** A part of zeros. */
    private static void part(ZipOutputStream zip, String name, long bytes) throws IOException {
        zip.putNextEntry(new ZipEntry(name));
        write(zip, bytes);
        zip.closeEntry();
    }

    private static void write(OutputStream out, long bytes) throws IOException {
        byte[] piece = new byte[1 << 16];
        for (long left = bytes; left > 0; left -= piece.length) {
            out.write(piece, 0, (int) Math.min(piece.length, left));
        }
    }
}
