package org.bookholder.speech;

import java.util.Arrays;
import java.util.Optional;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;

/**
 * Measures the level of each frame, finely enough to tell where speech begins and ends: of the whole sound, or of the
 * voice's band alone. Confined to one thread.
 *
 * <p>Frames are counted from the start of the first block; the count starts again at a block that does not directly
 * follow the previous one.
 */
public final class FrameMeter {
    private static final double FULL_SCALE = 32_768;
    private static final StreamTime ROUNDING = StreamTime.ofSeconds(0.001);

    private final boolean voiceOnly;
    private @Nullable VoiceBand band;
    private StreamTime origin = StreamTime.ZERO;
    private StreamTime heardTo = StreamTime.ZERO;
    private long frames;
    private long samplesSinceOrigin;
    private int samples;
    private double sum;
    private double squares;

    /** A meter of the whole sound. */
    public FrameMeter() {
        this(false);
    }

    private FrameMeter(boolean voiceOnly) {
        this.voiceOnly = voiceOnly;
    }

    /** A meter that hears what lies in the {@link VoiceBand} alone: where speech begins and ends does not depend on hum or rumble. */
    public static FrameMeter voiceBand() {
        return new FrameMeter(true);
    }

    /** Takes in a block, at the same rate as earlier ones; returns the frames that are now complete, if any. */
    public Optional<FrameLevels> hear(AudioBlock block) {
        if (samplesSinceOrigin == 0 || apart(block.start(), heardTo)) {
            begin(block);
        }
        heardTo = block.end();
        byte[] levels = new byte[(int) ((long) block.samples().length * FrameLevels.PER_SECOND / block.rate()) + 2];
        long before = frames;
        for (short sample : block.samples()) {
            double value = band == null ? sample : band.pass(sample);
            sum += value;
            squares += value * value;
            samples++;
            samplesSinceOrigin++;
            // The frame's last sample, from the whole count, so that rates such as 11,025 Hz do not drift.
            if (samplesSinceOrigin >= (frames + 1) * block.rate() / FrameLevels.PER_SECOND) {
                levels[(int) (frames - before)] = level();
                frames++;
            }
        }
        return frames == before
                ? Optional.empty()
                : Optional.of(new FrameLevels(
                        origin.plus(StreamTime.ofSamples(before, FrameLevels.PER_SECOND)),
                        Arrays.copyOf(levels, (int) (frames - before))));
    }

    private void begin(AudioBlock block) {
        origin = block.start();
        band = voiceOnly ? new VoiceBand(block.rate()) : null;
        frames = 0;
        samplesSinceOrigin = 0;
        clear();
    }

    private byte level() {
        double mean = sum / samples;
        double rms = Math.sqrt(Math.max(0, squares / samples - mean * mean)) / FULL_SCALE;
        clear();
        return (byte) Math.max(FrameLevels.SILENCE, Math.round(20 * Math.log10(Math.max(rms, 1e-6))));
    }

    private void clear() {
        samples = 0;
        sum = 0;
        squares = 0;
    }

    private static boolean apart(StreamTime a, StreamTime b) {
        return Math.abs(a.ticks() - b.ticks()) > ROUNDING.ticks();
    }
}
