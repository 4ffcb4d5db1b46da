package org.bookholder.app.script;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.TextEncoding;

/**
 * A lesson's file as it was found.
 *
 * @param file the file
 * @param text its text, with plain line feeds; that of a document as CommonMark
 * @param revision what tells one content of the file from another
 * @param editable whether it is a text file, so that the text can be saved in it
 * @param form how the text is written in the file
 */
public record LessonText(Path file, String text, String revision, boolean editable, Form form) {
    /**
     * How a text is written in a file, which stays as the author's own program has it.
     *
     * @param charset its character set
     * @param mark whether it begins with a byte order mark
     * @param lineEnd what stands between its lines
     */
    record Form(Charset charset, boolean mark, String lineEnd) {
        static final Form USUAL = new Form(StandardCharsets.UTF_8, false, "\n");

        static Form of(byte[] bytes, String text) {
            long lines = text.chars().filter(c -> c == '\n').count();
            boolean returns = 2L * (text.length() - text.replace("\r\n", "\n").length()) > lines;
            String lineEnd = returns ? "\r\n" : "\n";
            TextEncoding found = TextEncoding.of(bytes);
            return new Form(found.charset(), found.mark() > 0, lineEnd);
        }

        byte[] bytes(String text) {
            String whole = (mark ? "\ufeff" : "") + text.replace("\n", lineEnd);
            return whole.getBytes(charset);
        }
    }

    /** Takes what a file holds. */
    static LessonText of(Path file, byte[] bytes) throws ProblemException {
        String text = ScriptReader.convert(bytes, file.toString(), Map.of()).text();
        boolean editable = !ScriptReader.isDocument(file.toString());
        return new LessonText(
                file, even(text), revision(bytes), editable, editable ? Form.of(bytes, text) : Form.USUAL);
    }

    /** The text with plain line feeds, as a page gives it. */
    static String even(String text) {
        return text.replace("\r\n", "\n").replace('\r', '\n');
    }

    static String revision(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform must have SHA-256", e);
        }
    }
}
