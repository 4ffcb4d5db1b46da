package org.bookholder.runtime.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.timing.StreamTime;

/**
 * What was saved in the second place because the session's folder could not be written.
 *
 * @param sound how much sound
 * @param notes how many events
 * @param place where, for people
 * @param reason why it is not in the session's folder, for people
 */
public record KeptElsewhere(StreamTime sound, int notes, String place, String reason) {
    /** What is where and why, one sentence for people. */
    public String sentence() {
        List<String> what = new ArrayList<>();
        if (sound.ticks() > 0) {
            what.add(String.format(Locale.ROOT, "%.0f s of sound", sound.seconds()));
        }
        if (notes > 0) {
            what.add(notes == 1 ? "1 note" : notes + " notes");
        }
        return String.join(" and ", what) + " could not be saved in the session's folder (" + reason
                + ") and are kept in " + place;
    }
}
