package org.bookholder.journal.event;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.CRC32C;

/**
 * The text of an event with a checksum of its own at the end, so that a changed letter shows although the text can still be
 * understood. To whoever reads the text as JSON the checksum is one more property.
 */
public final class CheckedText {
    private static final Pattern CHECKED = Pattern.compile("(.*),\"crc32c\":\"([0-9a-f]{8})\"}", Pattern.DOTALL);

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
        return event.substring(0, event.length() - 1) + String.format(Locale.ROOT, ",\"crc32c\":\"%08x\"}", sum(event));
    }

    /** Compares a text with its checksum. */
    public static State state(String text) {
        Matcher parts = CHECKED.matcher(text);
        if (!parts.matches()) {
            return State.UNCHECKED;
        }
        long written = Long.parseLong(parts.group(2), 16);
        return written == sum(parts.group(1) + "}") ? State.INTACT : State.CHANGED;
    }

    private static long sum(String event) {
        CRC32C sum = new CRC32C();
        sum.update(event.getBytes(StandardCharsets.UTF_8));
        return sum.getValue();
    }
}
