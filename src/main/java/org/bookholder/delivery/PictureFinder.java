package org.bookholder.delivery;

import java.util.List;
import java.util.Locale;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;

/** Finds black stretches, stretches without motion and blips. Confined to one thread. */
final class PictureFinder {
    /** How a stretch without motion is called: nobody can tell from the picture whether it is meant. */
    static final String STILL = "still picture";

    /** A still of the author's may be left this much later than planned, or begun earlier, as pictures are not cut within. */
    private static final double SLACK = 0.2;

    private final Profile profile;
    private final Findings findings;
    private final List<Finding.Place> stills;
    private final Runs black = new Runs(this::black);
    private final BlipFinder blips;
    private byte @Nullable [] still;
    private StreamTime stillSince = StreamTime.ZERO;
    private StreamTime first = StreamTime.ZERO;
    private boolean seen;
    private boolean atEnd;

    /**
     * Begins.
     *
     * @param stills where the film shows stills that are meant
     */
    PictureFinder(Profile profile, Findings findings, List<Finding.Place> stills) {
        this.stills = List.copyOf(stills);
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
        if (still != null && seconds > profile.most(ProfileSetting.FROZEN) && !isMeant(end)) {
            findings.add(Finding.at(
                    stillSince,
                    end,
                    Grade.LOOK,
                    STILL,
                    "the picture stands still for " + seconds(seconds),
                    "is this a still of yours? if not, the picture is frozen: export it again"));
        }
    }

    private boolean isMeant(StreamTime end) {
        return stills.stream()
                .anyMatch(meant -> stillSince.seconds() > meant.start().seconds() - SLACK
                        && end.seconds() < meant.end().seconds() + SLACK);
    }

    static String seconds(double seconds) {
        return String.format(Locale.ROOT, "%.1f s", seconds);
    }
}
