package org.bookholder.app.handoff;

import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.footage.Footage;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.Timecode;

/** What a person should know about the footage of a hand-off, one line each. */
final class FootageRemarks {
    private FootageRemarks() {}

    /**
     * The remarks on footage that is no longer where it was matched, and on pictures that are counted at another rate than
     * their own.
     */
    static List<String> of(List<PlacedFootage> footage, Timecode counted) {
        List<String> remarks = new ArrayList<>();
        for (PlacedFootage placed : footage) {
            Footage file = placed.footage();
            if (!Files.isRegularFile(file.file())) {
                remarks.add(file.file()
                        + ": it is not there any more; the hand-off still points to this place. Put it back, or"
                        + " match it again where it is now");
            }
            file.picture()
                    .map(Footage.Picture::rate)
                    .filter(rate -> !rate.equals(counted.rate()))
                    .ifPresent(rate -> remarks.add(otherRate(file, rate, counted.rate())));
        }
        return remarks;
    }

    private static String otherRate(Footage file, FrameRate rate, FrameRate counted) {
        return file.name() + ": it has " + rate.label() + " frames a second, but the hand-off counts " + counted.label()
                + "; use it in a project of " + counted.label() + ", or choose the rate " + rate.label();
    }
}
