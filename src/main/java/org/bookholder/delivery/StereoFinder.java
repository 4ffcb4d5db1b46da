package org.bookholder.delivery;

import org.bookholder.delivery.Finding.Grade;
import org.bookholder.sound.Sides;
import org.bookholder.timing.StreamTime;

/**
 * Finds sound that is heard on one side only, and two sides that cancel each other when they are played together on one
 * loudspeaker, as a phone does. The limits are common practice. Confined to one thread.
 */
final class StereoFinder {
    /** The findings' kind. It is always looked for: a lesson's voice belongs on both sides. */
    static final String KIND = "stereo";

    private static final double SHORTEST_SECONDS = 2;

    private final Findings findings;
    private final int rate;
    private final Sides sides;
    private final Runs left = new Runs((start, end, count) -> oneSide(start, end, "left"));
    private final Runs right = new Runs((start, end, count) -> oneSide(start, end, "right"));
    private final Runs opposed = new Runs(this::opposed);
    private StreamTime frameStart = StreamTime.ZERO;

    StereoFinder(int rate, Findings findings) {
        this.rate = rate;
        sides = new Sides(rate);
        this.findings = findings;
    }

    /** One sample of each side, of which the first belongs to this time. */
    void hear(StreamTime blockStart, int index, float onLeft, float onRight) {
        if (sides.atStart()) {
            frameStart = blockStart.plus(StreamTime.ofSamples(index, rate));
        }
        sides.hear(onLeft, onRight).ifPresent(this::endFrame);
    }

    /** The sound ends. */
    void end(StreamTime end) {
        left.end(end);
        right.end(end);
        opposed.end(end);
    }

    /** Pauses belong to what they follow. */
    private void endFrame(Sides.Kind kind) {
        if (kind != Sides.Kind.QUIET) {
            left.see(frameStart, kind == Sides.Kind.LEFT_ONLY);
            right.see(frameStart, kind == Sides.Kind.RIGHT_ONLY);
            opposed.see(frameStart, kind == Sides.Kind.OPPOSED);
        }
    }

    private void oneSide(StreamTime start, StreamTime end, String side) {
        add(start, end, "heard on the " + side + " only", "put the voice on both sides, or export one channel");
    }

    private void opposed(StreamTime start, StreamTime end, int count) {
        add(
                start,
                end,
                "left and right cancel each other on one loudspeaker",
                "invert one side, or use one of them on both");
    }

    private void add(StreamTime start, StreamTime end, String what, String remedy) {
        double seconds = end.since(start).seconds();
        if (seconds >= SHORTEST_SECONDS) {
            findings.add(
                    Finding.at(start, end, Grade.MEND, KIND, what + ", for " + PictureFinder.seconds(seconds), remedy));
        }
    }
}
