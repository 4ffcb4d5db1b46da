package org.bookholder.delivery;

import java.util.Locale;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;

/** Finds black stretches, stretches without motion and blips. Confined to one thread. */
final class PictureFinder {
    private final Profile profile;
    private final Findings findings;
    private final Runs black = new Runs(this::black);
    private final BlipFinder blips;
    private byte @Nullable [] still;
    private StreamTime stillSince = StreamTime.ZERO;
    private StreamTime first = StreamTime.ZERO;
    private boolean seen;
    private boolean atEnd;

    PictureFinder(Profile profile, Findings findings) {
        this.profile = profile;
        this.findings = findings;
        this.blips = new BlipFinder((start, end, count) -> {
            if (profile.range(ProfileSetting.BLIPS).isPresent()) {
                findings.add(Finding.at(
                        start,
                        end,
                        Grade.MEND,
                        ProfileSetting.BLIPS.label(),
                        count == 1 ? "one frame of something else" : count + " frames of something else",
                        "cut them out"));
            }
        });
    }

    void see(StreamTime at, byte[] luma) {
        if (!seen) {
            seen = true;
            first = at;
        }
        boolean dark = Luma.black(luma);
        black.see(at, dark);
        blips.see(at, luma, dark);
        if (dark) {
            endStill(at);
            still = null;
        } else if (still == null || !Luma.still(still, luma)) {
            endStill(at);
            still = luma;
            stillSince = at;
        }
    }

    /** Ends the search; the last picture ends at {@code end}. */
    void end(StreamTime end) {
        if (!seen) {
            return;
        }
        atEnd = true;
        black.end(end);
        endStill(end);
        blips.end(end);
    }

    private void black(StreamTime start, StreamTime end, int count) {
        double seconds = end.since(start).seconds();
        boolean outside = start.equals(first) || atEnd;
        double most = outside ? ProfileSetting.BLACK_AT_ENDS : profile.most(ProfileSetting.BLACK);
        // A shorter stretch inside is a blip, or not black at all.
        if (profile.range(ProfileSetting.BLACK).isEmpty()
                || count <= BlipFinder.LONGEST
                || (outside && seconds <= most)) {
            return;
        }
        boolean whole = start.equals(first) && atEnd;
        findings.add(Finding.at(
                start,
                end,
                seconds > most ? Grade.MEND : Grade.LOOK,
                ProfileSetting.BLACK.label(),
                whole ? "the picture is black throughout" : "black for " + seconds(seconds),
                whole ? "export it again with the picture switched on" : "close the gap, unless it is meant"));
    }

    private void endStill(StreamTime end) {
        double seconds = end.since(stillSince).seconds();
        if (still != null && seconds > profile.most(ProfileSetting.FROZEN)) {
            findings.add(Finding.at(
                    stillSince,
                    end,
                    Grade.LOOK,
                    ProfileSetting.FROZEN.label(),
                    "nothing moves for " + seconds(seconds),
                    "look whether the picture is frozen, or a still that is meant"));
        }
    }

    static String seconds(double seconds) {
        return String.format(Locale.ROOT, "%.1f s", seconds);
    }
}
