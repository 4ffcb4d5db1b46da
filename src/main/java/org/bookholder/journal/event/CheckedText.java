package org.bookholder.journal.event;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.zip.CRC32C;

/**
 * The text of an event with a checksum of its own at the end, so that a changed letter shows although the text can still be
 * understood. To whoever reads the text as JSON the checksum is one more property.
 */
public final class CheckedText {
    private static final String BEFORE = ",\"crc32c\":\"";
    private static final String AFTER = "\"}";
    private static final int DIGITS = 8;
    private static final int LENGTH = BEFORE.length() + DIGITS + AFTER.length();

    private CheckedText() {}

    /** What a text's checksum tells, the best first. */
    public enum State {
        /** It is as it was written. */
        INTACT,
        /** It has no checksum: an earlier version wrote it. */
        UNCHECKED,
        /** It has changed since it was written. */
        CHANGED
    }

    /** Adds the checksum to an event's text, a JSON object that is not empty. */
    public static String of(String event) {
        String sum = HexFormat.of().toHexDigits(sum(event, ""), DIGITS);
        return event.substring(0, event.length() - 1) + BEFORE + sum + AFTER;
    }

    /** Compares a text with its checksum. */
    public static State state(String text) {
        int end = text.length() - LENGTH;
        if (end < 0 || !text.startsWith(BEFORE, end) || !text.endsWith(AFTER)) {
            return State.UNCHECKED;
        }
        String written = text.substring(end + BEFORE.length(), text.length() - AFTER.length());
        for (int i = 0; i < DIGITS; i++) {
            if ("0123456789abcdef".indexOf(written.charAt(i)) < 0) {
                return State.UNCHECKED;
            }
        }
        return HexFormat.fromHexDigitsToLong(written) == sum(text.substring(0, end), "}")
                ? State.INTACT
                : State.CHANGED;
    }

    private static long sum(String begin, String end) {
        CRC32C sum = new CRC32C();
        sum.update(begin.getBytes(StandardCharsets.UTF_8));
        sum.update(end.getBytes(StandardCharsets.UTF_8));
        return sum.getValue();
    }
}
