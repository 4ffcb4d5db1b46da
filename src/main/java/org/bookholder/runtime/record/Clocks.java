package org.bookholder.runtime.record;

import java.util.Locale;
import org.bookholder.timing.StreamTime;

/** Formats times for people. */
final class Clocks {
    private Clocks() {}

    /** Minutes and seconds, as in {@code 12:05}. */
    static String minutes(StreamTime time) {
        long seconds = (long) time.seconds();
        return String.format(Locale.ROOT, "%d:%02d", seconds / 60, seconds % 60);
    }
}
