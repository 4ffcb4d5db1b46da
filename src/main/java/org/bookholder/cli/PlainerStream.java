package org.bookholder.cli;

import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Prints in a console's character set, and replaces the few characters that the set may lack by simpler ones. */
final class PlainerStream extends PrintStream {
    private static final Map<Character, String> PLAINER = Map.of('\u201c', "\"", '\u201d', "\"", '\u2026', "...");

    private final CharsetEncoder encoder;

    PlainerStream(OutputStream out, Charset charset) {
        super(out, true, charset);
        encoder = charset.newEncoder();
    }

    /** All text output passes through this method. */
    @Override
    public void print(@Nullable String text) {
        super.print(text == null ? null : plainer(text));
    }

    private String plainer(String text) {
        if (encoder.canEncode(text)) {
            return text;
        }
        StringBuilder plain = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            String sign = PLAINER.get(c);
            plain.append(sign == null || encoder.canEncode(c) ? String.valueOf(c) : sign);
        }
        return plain.toString();
    }
}
