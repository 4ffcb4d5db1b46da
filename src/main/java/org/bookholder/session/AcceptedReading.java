package org.bookholder.session;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.bookholder.follow.model.Deviation;
import org.bookholder.script.pronounce.SoundAlike;

/**
 * A word that was read correctly although the recogniser heard something else. It is remembered so that the same
 * mistake is not reported again.
 *
 * <p>A swap is recognised again in every line, by its two words. A missing or added word is recognised again only in
 * its own line, because in another line the same word may really be missing or added.
 *
 * @param line the line, from 1; 0 for a swap, which applies to every line
 * @param written the script's word in lower case, empty for an added one
 * @param said what was heard in lower case, empty for a dropped one
 * @param kind the kind of deviation that was reported
 */
public record AcceptedReading(int line, String written, String said, Deviation.Kind kind) {
    /** What the rules of spelling know; all other letters are silent to them, so that whole words would sound alike. */
    private static final Pattern SPELT = Pattern.compile("[a-z' ]+");

    /**
     * What to remember of a deviation that was reported wrongly; empty if the recogniser could not tell what it heard.
     */
    static Optional<AcceptedReading> from(int line, Deviation call) {
        boolean swap = call.kind() == Deviation.Kind.SWAPPED;
        if (swap && (call.written().isEmpty() || call.said().isEmpty())) {
            return Optional.empty();
        }
        return Optional.of(of(swap ? 0 : line, call));
    }

    /** The form in which a deviation in a line would be remembered. */
    static AcceptedReading of(int line, Deviation call) {
        return new AcceptedReading(
                call.kind() == Deviation.Kind.SWAPPED ? 0 : line,
                call.written().toLowerCase(Locale.ROOT),
                call.said().toLowerCase(Locale.ROOT),
                call.kind());
    }

    /** A word of the script that is heard as something else, in every line. */
    public static AcceptedReading heardAs(String written, String said) {
        return new AcceptedReading(
                0, written.toLowerCase(Locale.ROOT), said.toLowerCase(Locale.ROOT), Deviation.Kind.SWAPPED);
    }

    /** Whether it applies to every line. */
    boolean everywhere() {
        return line == 0 && kind == Deviation.Kind.SWAPPED;
    }

    /** Whether the other one is the same mistake: what was heard for a word may be spelt in another way that sounds the same. */
    boolean covers(AcceptedReading other) {
        return equals(other)
                || (everywhere()
                        && other.everywhere()
                        && written.equals(other.written)
                        && SPELT.matcher(said).matches()
                        && SPELT.matcher(other.said).matches()
                        && SoundAlike.distance(said, other.said) == 0);
    }
}
