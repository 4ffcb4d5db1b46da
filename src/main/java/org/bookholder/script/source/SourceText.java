package org.bookholder.script.source;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.LeftOut;

/** Reads a file as text, in UTF-8 or in the encoding that it is found to have. */
final class SourceText {
    /** Far larger than any script, so that a film chosen by mistake is not read into memory. */
    static final long MOST_BYTES = 16L << 20;

    private static final String SAVE_AS_TEXT = "give a script saved as Markdown or plain text in UTF-8";

    private SourceText() {}

    static String read(Path file) throws ProblemException {
        return decode(bytes(file), file.toString());
    }

    /** A file's bytes; throws a problem if it is not a file, may not be read, or is too large for a script. */
    static byte[] bytes(Path file) throws ProblemException {
        String source = file.toString();
        try {
            if (Files.notExists(file)) {
                throw new ProblemException("there is no such file", source, "check the name and the folder");
            }
            if (Files.exists(file) && !Files.isRegularFile(file)) {
                throw new ProblemException("this is not a file", source, "give the script file itself");
            }
            if (Files.size(file) > MOST_BYTES) {
                throw new ProblemException("the file is too large for a script (over 16 MB)", source, SAVE_AS_TEXT);
            }
            return Files.readAllBytes(file);
        } catch (AccessDeniedException e) {
            throw new ProblemException("the file may not be read", source, "check its permissions", e);
        } catch (IOException e) {
            throw new ProblemException("the file cannot be read", source, "check that the drive is there", e);
        }
    }

    static String decode(byte[] bytes, String source) throws ProblemException {
        refuseKnown(bytes, source);
        TextEncoding encoding = TextEncoding.of(bytes);
        return decode(bytes, encoding.mark(), encoding.charset(), source);
    }

    /** What the author should know of a text's encoding: that it was guessed. */
    static List<LeftOut> notes(byte[] bytes) {
        TextEncoding encoding = TextEncoding.of(bytes);
        return encoding.guessed()
                ? List.of(new LeftOut(
                        0,
                        "the file's encoding",
                        "it does not say which it is and was read as "
                                + encoding.charset().displayName(Locale.ROOT)
                                + "; if letters look wrong, save it as UTF-8"))
                : List.of();
    }

    /** Refuses files that are known by their first bytes, with what to do. */
    private static void refuseKnown(byte[] bytes, String source) throws ProblemException {
        String start = new String(bytes, 0, Math.min(bytes.length, 8), StandardCharsets.ISO_8859_1);
        String what = start.startsWith("%PDF")
                ? "this is a PDF by another name"
                : start.startsWith("{\\rtf")
                        ? "this is rich text (RTF) by another name"
                        : start.startsWith("PK\003\004")
                                ? "this is a document or an archive, not text"
                                : start.startsWith("\u00d0\u00cf\u0011\u00e0") ? "this is an old DOC document" : "";
        if (!what.isEmpty()) {
            throw new ProblemException(what, source, "open it in a word processor and save or export it as DOCX");
        }
    }

    private static String decode(byte[] bytes, int from, Charset charset, String source) throws ProblemException {
        CharsetDecoder decoder = charset.newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer in = ByteBuffer.wrap(bytes, from, bytes.length - from);
        try {
            String text = decoder.decode(in).toString();
            int binary = firstControl(text);
            if (binary >= 0) {
                throw new ProblemException(
                        "this is not a text file", source + ":" + lineAt(text, binary), SAVE_AS_TEXT);
            }
            return text;
        } catch (CharacterCodingException e) {

            CharBuffer good = StandardCharsets.ISO_8859_1.decode(ByteBuffer.wrap(bytes, from, in.position() - from));
            if (firstControl(good.toString()) >= 0) {
                throw new ProblemException("this is not a text file", source + ":1", SAVE_AS_TEXT, e);
            }
            long line = lineAt(good.toString(), good.length());
            throw new ProblemException(
                    "this is not " + charset.name() + " text", source + ":" + line, "save the script as UTF-8", e);
        }
    }

    private static int firstControl(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < ' ' && c != '\n' && c != '\r' && c != '\t' && c != '\f' && c != '\u000b') {
                return i;
            }
        }
        return -1;
    }

    private static long lineAt(String text, int index) {
        return 1 + text.substring(0, index).chars().filter(c -> c == '\n').count();
    }
}
