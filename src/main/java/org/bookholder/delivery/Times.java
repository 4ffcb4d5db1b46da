package org.bookholder.delivery;

import java.util.Locale;
import org.bookholder.timing.StreamTime;

/** Formats times of a film for people. */
final class Times {
    private Times() {}

    /** As in 0:01:05.3. */
    static String clock(StreamTime time) {
        long tenths = Math.round(time.seconds() * 10);
        return String.format(
                Locale.ROOT, "%d:%02d:%02d.%d", tenths / 36_000, tenths / 600 % 60, tenths / 10 % 60, tenths % 10);
    }
}
