package org.bookholder.sound;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.FrameLevels;
import org.bookholder.speech.FrameMeter;
import org.bookholder.timing.StreamTime;

/**
 * Detects sound that is unusable while a take is recorded. Confined to one thread.
 *
 * <p>No standard covers this. The limits are our own and only catch sound that is really unusable: {@value
 * #CLIPPED_LEAST} samples clipped at full scale within half a second; a hole of digital silence in the middle of a loud
 * wave, if the room itself is not digitally silent; a voice less than {@value #LEAST_RATIO} dB louder than the room
 * (the 95th and the 5th percentile of the levels of five seconds).
 */
public final class SpoilWatch {
    private static final int CLIPPED_LEAST = 12;
    private static final StreamTime CLIPPED_WITHIN = StreamTime.ofSeconds(0.5);

    private static final double LEAST_RATIO = 15;

    /** Sound that varies by less than this, in dB, is not a voice. */
    private static final int STEADY = 2;

    private static final int WINDOW = 5 * FrameLevels.PER_SECOND;

    /** Nobody speaks more softly than this, in dBFS. */
    private static final int VOICE = -50;

    /** How many levels are needed to know the level of the room. */
    private static final int ROOM_KNOWN = FrameLevels.PER_SECOND;

    private static final double FULL_SCALE = 32_768;

    private final FrameMeter meter = new FrameMeter();
    private final ClippedRuns runs = new ClippedRuns();
    private final HoleFinder holes = new HoleFinder();
    private final byte[] levels = new byte[WINDOW];
    private long frames;
    private StreamTime clippedSince = StreamTime.ZERO;
    private int clipped;

    /** Takes in a block; returns the parts newly found to be unusable, usually none. */
    public List<Spoil> hear(AudioBlock block) {
        return hear(block, meter.hear(block));
    }

    /**
     * The same with the levels of the whole sound.
     *
     * @param measured the frames that this block completes, if any
     */
    List<Spoil> hear(AudioBlock block, Optional<FrameLevels> measured) {
        List<Spoil> spoils = new ArrayList<>();
        short[] samples = block.samples();
        for (int i = 0; i < samples.length; i++) {
            int fresh = runs.hear(samples[i] / FULL_SCALE);
            if (fresh > 0) {
                clip(block.start().plus(StreamTime.ofSamples(i, block.rate())), fresh, spoils);
            }
        }
        holes.hear(block).stream().filter(this::missing).forEach(spoils::add);
        measured.ifPresent(levels -> noise(levels, spoils));
        return spoils;
    }

    private void clip(StreamTime at, int count, List<Spoil> spoils) {
        if (clipped == 0 || CLIPPED_WITHIN.isBefore(at.since(clippedSince))) {
            clippedSince = at;
            clipped = 0;
        }
        clipped += count;
        if (clipped >= CLIPPED_LEAST) {
            spoils.add(new Spoil(clippedSince, at, Spoil.Kind.CLIPPED));
            clipped = 0;
        }
    }

    /**
     * Whether a hole means that sound is missing. Synthetic voices, and microphones with a noise gate, are digitally
     * silent between words anyway, so with them a hole means nothing.
     */
    private boolean missing(Spoil hole) {
        int own = (int) Math.ceil(hole.end().since(hole.start()).seconds() * FrameLevels.PER_SECOND) + 1;
        long known = Math.min(frames, WINDOW) - own;
        return known >= ROOM_KNOWN && percentile(5, sorted(known, own)) > FrameLevels.SILENCE;
    }

    /** Runs once a second; the verdict on the window applies to the second in its middle. */
    private void noise(FrameLevels measured, List<Spoil> spoils) {
        for (int i = 0; i < measured.decibels().length; i++) {
            levels[(int) (frames++ % WINDOW)] = measured.decibels()[i];
            if (frames >= WINDOW && frames % FrameLevels.PER_SECOND == 0 && noisy()) {
                StreamTime now = measured.start().plus(StreamTime.ofSamples(i + 1L, FrameLevels.PER_SECOND));
                spoils.add(new Spoil(
                        now.since(StreamTime.ofSeconds(3)), now.since(StreamTime.ofSeconds(2)), Spoil.Kind.NOISY));
            }
        }
    }

    private boolean noisy() {
        byte[] sorted = sorted(WINDOW, 0);
        int voice = percentile(95, sorted);
        int ratio = voice - percentile(5, sorted);
        return voice >= VOICE && ratio >= STEADY && ratio < LEAST_RATIO;
    }

    private static int percentile(int percent, byte[] sorted) {
        return sorted[sorted.length * percent / 100];
    }

    /** Returns the {@code count} levels before the last {@code skipped} ones, softest first. */
    private byte[] sorted(long count, int skipped) {
        byte[] sorted = new byte[(int) count];
        for (int i = 0; i < sorted.length; i++) {
            sorted[i] = levels[(int) ((frames - skipped - 1 - i) % WINDOW)];
        }
        Arrays.sort(sorted);
        return sorted;
    }
}
