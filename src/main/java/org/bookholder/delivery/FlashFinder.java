package org.bookholder.delivery;

import java.util.Optional;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.footage.Film;
import org.bookholder.timing.StreamTime;
import org.bookholder.view.cue.Contrast;
import org.jspecify.annotations.Nullable;

/**
 * Finds flashing light that can harm viewers with photosensitive epilepsy: more than three flashes in any second, of
 * light or of saturated red, over more than a quarter of any field of view (WCAG 2.2, success criterion 2.3.1). Two or
 * three flashes a second for more than five seconds are worth a look too (ITU-R BT.1702, from memory). It is a check, not
 * a certificate; stripes and other regular patterns are not looked for. Confined to one thread.
 */
final class FlashFinder {
    /** The findings' kind. It is always looked for: no profile can leave it out. */
    static final String KIND = "flashing";

    private static final double LONG_SECONDS = 5;
    private static final StreamTime SECOND = StreamTime.ofSeconds(1);

    private final Findings findings;
    private final LightChanges light = new LightChanges();
    private final RedChanges reds = new RedChanges();
    private final float[] linear = new float[256];
    private final Stretch lightFlashes = new Stretch("flashes more than three times a second");
    private final Stretch redFlashes = new Stretch("red light flashes more than three times a second");
    private final Stretch longFlashes = new Stretch("flashes two or three times a second");

    FlashFinder(Findings findings) {
        this.findings = findings;
        for (int i = 0; i < linear.length; i++) {
            // The luminance of a grey is the linear light of each of its channels.
            linear[i] = (float) Contrast.luminance(i << 16 | i << 8 | i);
        }
    }

    /** The mean colours of a picture's parts, as {@link Film.Viewer} has them. */
    void see(StreamTime at, byte[] colours) {
        for (int part = 0; part < Film.Viewer.COLUMNS * Film.Viewer.ROWS; part++) {
            float r = linear[colours[3 * part] & 255];
            float g = linear[colours[3 * part + 1] & 255];
            float b = linear[colours[3 * part + 2] & 255];
            light.see(part, 0.2126f * r + 0.7152f * g + 0.0722f * b, at);
            reds.see(part, r, g, b, at);
        }
        Optional<StreamTime> lightNow = light.changes().flashing(at, FlashChanges.TOO_MANY);
        Optional<StreamTime> redNow = reds.changes().flashing(at, FlashChanges.TOO_MANY);
        lightFlashes.see(at, lightNow);
        redFlashes.see(at, redNow);
        if (lightNow.isPresent() || redNow.isPresent()) {
            longFlashes.drop();
        } else {
            longFlashes.see(
                    at,
                    light.changes()
                            .flashing(at, FlashChanges.TWO_FLASHES)
                            .or(() -> reds.changes().flashing(at, FlashChanges.TWO_FLASHES)));
        }
    }

    /** Ends the search. */
    void end() {
        lightFlashes.end();
        redFlashes.end();
        longFlashes.end();
    }

    private void report(Stretch stretch, StreamTime start, StreamTime last) {
        double seconds = last.since(start).seconds();
        boolean mild = stretch == longFlashes;
        if (mild && seconds <= LONG_SECONDS) {
            return;
        }
        findings.add(Finding.at(
                start,
                last,
                mild ? Grade.LOOK : Grade.MEND,
                KIND,
                stretch.what + ", for " + PictureFinder.seconds(seconds),
                mild
                        ? "look whether it must flash for so long; this can trouble sensitive viewers"
                        : "take it out, or make it slower, weaker or smaller; it can cause seizures (WCAG 2.2,"
                                + " 2.3.1)"));
    }

    /** A stretch with flashes of one kind: it ends when a second has passed without one. */
    private final class Stretch {
        private final String what;
        private @Nullable StreamTime start;
        private StreamTime last = StreamTime.ZERO;

        Stretch(String what) {
            this.what = what;
        }

        void see(StreamTime at, Optional<StreamTime> since) {
            if (start != null && at.since(last).compareTo(SECOND) > 0) {
                end();
            }
            if (since.isPresent()) {
                start = start == null ? since.get() : start;
                last = at;
            }
        }

        void drop() {
            start = null;
        }

        void end() {
            if (start != null) {
                report(this, start, last);
                start = null;
            }
        }
    }
}
