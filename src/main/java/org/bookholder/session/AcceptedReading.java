package org.bookholder.session;

import java.util.Locale;
import java.util.Optional;
import org.bookholder.follow.model.Deviation;

/**
 * A word that was read right although the recogniser heard something else: evidence about the recogniser, so that the
 * same is not called again.
 *
 * <p>A swap is known again in every line, by the two words. That nothing or something more was heard says little of other
 * lines, where the same word may really be left out or put in; so that is known again in its own line only.
 *
 * @param line the line, from 1; 0 for a swap, in whatever line
 * @param written the script's word in lower case, empty for an added one
 * @param said what was heard in lower case, empty for a dropped one
 * @param kind what was called
 */
public record AcceptedReading(int line, String written, String said, Deviation.Kind kind) {
    /** What is learned from a call that was wrong; nothing if the recogniser could not say what it heard. */
    static Optional<AcceptedReading> from(int line, Deviation call) {
        boolean swap = call.kind() == Deviation.Kind.SWAPPED;
        if (swap && (call.written().isEmpty() || call.said().isEmpty())) {
            return Optional.empty();
        }
        return Optional.of(of(swap ? 0 : line, call));
    }

    /** As {@code call} in {@code line} would be remembered. */
    static AcceptedReading of(int line, Deviation call) {
        return new AcceptedReading(
                call.kind() == Deviation.Kind.SWAPPED ? 0 : line,
                call.written().toLowerCase(Locale.ROOT),
                call.said().toLowerCase(Locale.ROOT),
                call.kind());
    }
}
