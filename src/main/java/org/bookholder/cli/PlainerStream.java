package org.bookholder.cli;

import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Prints in a console's character set, and replaces the few characters that the set may lack by simpler ones.
 *
 * <p>Characters that would command the terminal or reorder its text, as titles, lines and file names may hold them, are
 * printed as JSON writes them, a backslash, u and four hexadecimal digits; in JSON they stay the same characters. Bytes pass as
 * they are, for what the program itself says to the terminal.
 */
final class PlainerStream extends PrintStream {
    private static final Map<Character, String> PLAINER = Map.of('\u201c', "\"", '\u201d', "\"", '\u2026', "...");

    /**
     * Control characters but tab and line feed, a carriage return that would go back in its row, line and paragraph separators, and
     * the characters that set the direction of text (Unicode's property Bidi_Control).
     */
    private static final Pattern COMMANDS = Pattern.compile(
            "[\\p{Cc}&&[^\\t\\n\\r]]|\\r(?!\\n)" + "|[\\u061c\\u200e\\u200f\\u2028-\\u202e\\u2066-\\u2069]");

    private final CharsetEncoder encoder;

    PlainerStream(OutputStream out, Charset charset) {
        super(out, true, charset);
        encoder = charset.newEncoder();
    }

    /** All text output passes through this method. */
    @Override
    public void print(@Nullable String text) {
        super.print(text == null ? null : plainer(harmless(text)));
    }

    private static String harmless(String text) {
        return COMMANDS.matcher(text)
                .replaceAll(found -> String.format(
                        Locale.ROOT, "\\\\u%04x", (int) found.group().charAt(0)));
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
