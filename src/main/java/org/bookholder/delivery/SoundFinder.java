package org.bookholder.delivery;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.footage.Film;
import org.bookholder.sound.ClippedRuns;
import org.bookholder.sound.Decibels;
import org.bookholder.sound.LoudnessMeter;
import org.bookholder.sound.LoudnessReading;
import org.bookholder.timing.StreamTime;

/** Finds what is wrong with a film's sound, and measures its loudness. Confined to one thread. */
final class SoundFinder {
    /** The kind of sound that drops out. It is always looked for. */
    static final String DROPOUT = "drop-out";

    /** Sound below this level is silence. */
    private static final double SILENCE = Decibels.amplitude(-50);

    private static final int PER_SECOND = 1000;

    /** This many clipped samples within half a second can be heard. */
    private static final int CLIPPED_LEAST = 6;

    private static final StreamTime CLIPPED_GAP = StreamTime.ofSeconds(0.5);

    private final Profile profile;
    private final Findings findings;
    private final int rate;
    private final LoudnessMeter meter;
    private final ClippedRuns[] clipped;
    private final double[][] past;
    private final Runs silence = new Runs(this::silence);
    private final ClickFinder clicks;
    private final Optional<StereoFinder> stereo;
    private final BandFinder band;
    private final DropoutFinder[] dropouts;
    private final FlatTopFinder flatTops;
    private final EchoFinder echo;
    private final NoiseFinder noise;
    private StreamTime clippedSince = StreamTime.ZERO;
    private StreamTime clippedTo = StreamTime.ZERO;
    private int clippedCount;
    private StreamTime dropoutEnd = StreamTime.ZERO;
    private final List<Finding.Place> found = new ArrayList<>();
    private final List<Finding.Place> suspected = new ArrayList<>();
    private boolean begun;
    private StreamTime first = StreamTime.ZERO;
    private boolean atEnd;
    private int inFrame;
    private double peak;
    private double jolt;

    SoundFinder(Film.Sound sound, Profile profile, Findings findings) {
        this.profile = profile;
        this.findings = findings;
        rate = sound.rate();
        List<Double> weights = sound.weights();
        // A single channel is played on two loudspeakers.
        meter = weights.size() == 1
                ? new LoudnessMeter(rate, 2)
                : new LoudnessMeter(
                        rate, weights.stream().mapToDouble(Double::doubleValue).toArray());
        clipped = new ClippedRuns[weights.size()];
        for (int i = 0; i < clipped.length; i++) {
            clipped[i] = new ClippedRuns();
        }
        past = new double[clipped.length][2];
        stereo = clipped.length == 2 ? Optional.of(new StereoFinder(rate, findings)) : Optional.empty();
        band = new BandFinder(rate, findings);
        dropouts = new DropoutFinder[clipped.length];
        Arrays.setAll(dropouts, i -> new DropoutFinder(rate, this::dropout, this::suspected));
        flatTops = new FlatTopFinder(rate, this::flat);
        echo = new EchoFinder(rate, findings);
        noise = new NoiseFinder(rate, findings);
        clicks = new ClickFinder(rate, (start, end, count) -> {
            if (profile.range(ProfileSetting.CLICKS).isPresent()) {
                findings.add(Finding.at(
                        start,
                        end,
                        Grade.LOOK,
                        ProfileSetting.CLICKS.label(),
                        "a click",
                        "listen; fade over the cut by some frames, or repair the sound"));
            }
        });
    }

    void hear(StreamTime at, float[][] channels) {
        if (!begun) {
            begun = true;
            first = at;
        }
        meter.hear(channels);
        for (int i = 0; i < channels[0].length; i++) {
            for (int channel = 0; channel < channels.length; channel++) {
                hear(channel, channels[channel][i], at, i);
            }
            hearTogether(channels, at, i);
            clicks.hear(at, i, jolt);
            jolt = 0;
            if (++inFrame >= rate / PER_SECOND) {
                endFrame(at.plus(StreamTime.ofSamples(i + 1L, rate)));
            }
        }
    }

    private void hear(int channel, double sample, StreamTime blockStart, int index) {
        double[] before = past[channel];
        jolt = Math.max(jolt, Math.abs(sample - 2 * before[0] + before[1]));
        before[1] = before[0];
        before[0] = sample;
        peak = Math.max(peak, Math.abs(sample));
        dropouts[channel].hear(blockStart, index, sample);
        int fresh = clipped[channel].hear(sample);
        if (fresh > 0) {
            clipped(blockStart.plus(StreamTime.ofSamples(index, rate)), fresh);
        }
    }

    private void hearTogether(float[][] channels, StreamTime blockStart, int index) {
        float left = channels[0][index];
        float both = left;
        if (stereo.isPresent()) {
            float right = channels[1][index];
            stereo.get().hear(blockStart, index, left, right);
            // A part of the right, so that two sides that cancel each other are still heard.
            both = (left + right / 2) / 1.5f;
        }
        band.hear(both);
        echo.hear(both);
        noise.hear(both);
        flatTops.hear(blockStart, index, both);
    }

    private void endFrame(StreamTime end) {
        StreamTime start = new StreamTime(Math.max(0, end.ticks() - StreamTime.TICKS_PER_SECOND / PER_SECOND));
        silence.see(start, peak < SILENCE);
        inFrame = 0;
        peak = 0;
    }

    private void clipped(StreamTime at, int count) {
        if (clippedCount > 0 && CLIPPED_GAP.isBefore(at.since(clippedTo))) {
            endClipped();
        }
        if (clippedCount == 0) {
            clippedSince = at;
        }
        clippedTo = at;
        clippedCount += count;
    }

    private void endClipped() {
        if (clippedCount >= CLIPPED_LEAST
                && profile.range(ProfileSetting.CLIPPED).isPresent()) {
            findings.add(Finding.at(
                    clippedSince,
                    clippedTo,
                    Grade.MEND,
                    ProfileSetting.CLIPPED.label(),
                    clippedCount + " samples cut off at full scale",
                    "lower the sound before the export; if it is so in the recording, use another take"));
        }
        clippedCount = 0;
    }

    /** Both sides drop out together in most films. */
    private void dropout(StreamTime start, StreamTime end, int count) {
        if (dropoutEnd.isBefore(start)) {
            findings.add(
                    dropout(start, end, "use another take, or fill the hole; look whether the recording has it, too"));
            dropoutEnd = end;
            found.add(Finding.Place.since(start, end));
        }
    }

    static Finding dropout(StreamTime start, StreamTime end, String remedy) {
        return Finding.at(
                start,
                end,
                Grade.MEND,
                DROPOUT,
                "the sound drops out for " + Math.round(1000 * end.since(start).seconds()) + " ms",
                remedy);
    }

    private void suspected(StreamTime start, StreamTime end, int count) {
        suspected.add(Finding.Place.since(start, end));
    }

    /** Where the sound may drop out, unless the voice is so; in order of time, but for those that were found. */
    List<Finding.Place> suspected() {
        List<Finding.Place> left = new ArrayList<>();
        for (Finding.Place place : suspected) {
            boolean known = !left.isEmpty()
                    && place.start().isBefore(left.get(left.size() - 1).end());
            if (!known
                    && found.stream()
                            .noneMatch(f -> f.start().isBefore(place.end())
                                    && place.start().isBefore(f.end()))) {
                left.add(place);
            }
        }
        return left;
    }

    private void flat(StreamTime start, StreamTime end, int tops, double height) {
        if (profile.range(ProfileSetting.CLIPPED).isPresent()) {
            findings.add(Finding.at(
                    start,
                    end,
                    Grade.MEND,
                    ProfileSetting.CLIPPED.label(),
                    String.format(Locale.ROOT, "%d waves cut off at %.1f dBFS", tops, Decibels.ofAmplitude(height)),
                    "it was cut off before it was lowered: use another take, or the recording itself"));
        }
    }

    /** Ends the search; the sound ends at {@code end}. */
    void end(StreamTime end) {
        if (begun) {
            atEnd = true;
            silence.end(end);
            endClipped();
            stereo.ifPresent(finder -> finder.end(end));
            band.end();
            flatTops.end();
            echo.end();
            noise.end();
        }
    }

    private void silence(StreamTime start, StreamTime end, int count) {
        if (profile.range(ProfileSetting.SILENT).isEmpty()) {
            return;
        }
        double seconds = end.since(start).seconds();
        // The first frame of a sound may begin a little late.
        if (atEnd && start.since(first).seconds() < 0.05) {
            findings.add(Finding.ofAll(
                    Grade.MEND,
                    ProfileSetting.SILENT.label(),
                    "the sound is silent throughout",
                    "switch the sound track on"));
        } else if (seconds > profile.most(ProfileSetting.SILENT)) {
            findings.add(Finding.at(
                    start,
                    end,
                    Grade.LOOK,
                    ProfileSetting.SILENT.label(),
                    "silent for " + PictureFinder.seconds(seconds),
                    "listen whether a piece of sound is missing"));
        }
    }

    LoudnessReading loudness() {
        return meter.reading();
    }
}
