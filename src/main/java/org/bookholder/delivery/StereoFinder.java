package org.bookholder.delivery;

import org.bookholder.delivery.Finding.Grade;
import org.bookholder.sound.Decibels;
import org.bookholder.timing.StreamTime;

/**
 * Finds sound that is heard on one side only, and two sides that cancel each other when they are played together on one
 * loudspeaker, as a phone does. The limits are common practice. Confined to one thread.
 */
final class StereoFinder {
    /** The findings' kind. It is always looked for: a lesson's voice belongs on both sides. */
    static final String KIND = "stereo";

    private static final int PER_SECOND = 10;
    private static final double SOUNDING = Math.pow(Decibels.amplitude(-50), 2);

    /** A side that is softer than the other by this much is not heard beside it: 20 dB, as power. */
    private static final double SOFTER = 0.01;

    /** Below this correlation of the two sides more than half of their sound is lost on one loudspeaker. */
    private static final double OPPOSED = -0.5;

    private static final double SHORTEST_SECONDS = 2;

    private final Findings findings;
    private final int rate;
    private final Runs left = new Runs((start, end, count) -> oneSide(start, end, "left"));
    private final Runs right = new Runs((start, end, count) -> oneSide(start, end, "right"));
    private final Runs opposed = new Runs(this::opposed);
    private double leftPower;
    private double rightPower;
    private double product;
    private int samples;
    private StreamTime frameStart = StreamTime.ZERO;

    StereoFinder(int rate, Findings findings) {
        this.rate = rate;
        this.findings = findings;
    }

    /** One sample of each side, of which the first belongs to this time. */
    void hear(StreamTime blockStart, int index, float onLeft, float onRight) {
        if (samples == 0) {
            frameStart = blockStart.plus(StreamTime.ofSamples(index, rate));
        }
        leftPower += onLeft * onLeft;
        rightPower += onRight * onRight;
        product += onLeft * onRight;
        if (++samples >= rate / PER_SECOND) {
            endFrame();
        }
    }

    /** The sound ends. */
    void end(StreamTime end) {
        left.end(end);
        right.end(end);
        opposed.end(end);
    }

    /** Pauses belong to what they follow. */
    private void endFrame() {
        double loudest = Math.max(leftPower, rightPower);
        if (loudest > SOUNDING * samples) {
            boolean alone = Math.min(leftPower, rightPower) < SOFTER * loudest;
            left.see(frameStart, alone && leftPower > rightPower);
            right.see(frameStart, alone && rightPower > leftPower);
            opposed.see(frameStart, !alone && product < OPPOSED * Math.sqrt(leftPower * rightPower));
        }
        leftPower = 0;
        rightPower = 0;
        product = 0;
        samples = 0;
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
