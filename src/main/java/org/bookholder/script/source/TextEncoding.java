package org.bookholder.script.source;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import org.mozilla.universalchardet.UniversalDetector;

/**
 * How a text file is encoded.
 *
 * @param charset its character set
 * @param mark length of its byte order mark, in bytes
 * @param guessed whether neither a mark nor valid UTF-8 tells the character set
 */
public record TextEncoding(Charset charset, int mark, boolean guessed) {
    private static final Charset WINDOWS = Charset.forName("windows-1252");

    /** Of 100 bytes of Latin text in UTF-16, every other one is zero. */
    private static final int LEAST_ZEROES = 30;

    /** Finds the encoding of a file. */
    public static TextEncoding of(byte[] bytes) {
        if (startsWith(bytes, 0xef, 0xbb, 0xbf)) {
            return new TextEncoding(StandardCharsets.UTF_8, 3, false);
        }
        if (startsWith(bytes, 0xff, 0xfe)) {
            return new TextEncoding(StandardCharsets.UTF_16LE, 2, false);
        }
        if (startsWith(bytes, 0xfe, 0xff)) {
            return new TextEncoding(StandardCharsets.UTF_16BE, 2, false);
        }
        @Nullable Charset wide = wide(bytes);
        if (wide != null) {
            return new TextEncoding(wide, 0, true);
        }
        return decodes(bytes, StandardCharsets.UTF_8)
                ? new TextEncoding(StandardCharsets.UTF_8, 0, false)
                : new TextEncoding(detected(bytes), 0, true);
    }

    private static boolean startsWith(byte[] bytes, int... mark) {
        for (int i = 0; i < mark.length; i++) {
            if (bytes.length <= i || (bytes[i] & 0xff) != mark[i]) {
                return false;
            }
        }
        return true;
    }

    /** UTF-16 without a byte order mark, by its zeroes; null if it is not that. */
    private static @Nullable Charset wide(byte[] bytes) {
        if (bytes.length < 2 || bytes.length % 2 != 0) {
            return null;
        }
        int[] zeroes = new int[2];
        for (int i = 0; i < bytes.length; i++) {
            zeroes[i % 2] += bytes[i] == 0 ? 1 : 0;
        }
        int least = Math.max(1, bytes.length * LEAST_ZEROES / 100);
        if (zeroes[1] >= least && zeroes[0] == 0) {
            return StandardCharsets.UTF_16LE;
        }
        return zeroes[0] >= least && zeroes[1] == 0 ? StandardCharsets.UTF_16BE : null;
    }

    /** What the detector finds; Windows-1252, which most such files are, where it finds another Western one or none. */
    private static Charset detected(byte[] bytes) {
        UniversalDetector detector = new UniversalDetector();
        detector.handleData(bytes, 0, bytes.length);
        detector.dataEnd();
        @Nullable String name = detector.getDetectedCharset();
        boolean western = name == null || name.startsWith("ISO-8859-1") || !Charset.isSupported(name);
        Charset found = western ? WINDOWS : Charset.forName(name);
        return decodes(bytes, found) ? found : decodes(bytes, WINDOWS) ? WINDOWS : StandardCharsets.UTF_8;
    }

    private static boolean decodes(byte[] bytes, Charset charset) {
        try {
            charset.newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes));
            return true;
        } catch (CharacterCodingException e) {
            return false;
        }
    }
}
