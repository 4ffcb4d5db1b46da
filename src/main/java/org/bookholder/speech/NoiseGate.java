package org.bookholder.speech;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.bookholder.timing.StreamTime;

/**
 * Replaces sound no louder than the room by digital silence, so that a recogniser hears no words in it and can tell
 * where an utterance ends. Confined to one thread.
 *
 * <p>The room's level is that of the quietest tenth of the last ten seconds. A block {@value #OPENING_DB} dB above it
 * opens the gate, which then stays open for {@value #HOLD_SECONDS} s. While the gate is shut, the last {@value
 * #LEAD_SECONDS} s are held back and released unchanged when it opens, so that a word keeps its soft beginning; while
 * it is open, nothing is delayed. The mean is subtracted from levels, so that a DC offset of the microphone does not
 * count as sound. Below {@value #LOWEST_DB} dBFS the gate stays shut, and from {@value #HIGHEST_DB} dBFS it is always
 * open.
 */
public final class NoiseGate {
    private static final double OPENING_DB = 6;
    private static final double LOWEST_DB = -70;
    private static final double HIGHEST_DB = -35;
    private static final double HOLD_SECONDS = 0.5;
    private static final double LEAD_SECONDS = 0.2;
    private static final StreamTime HOLD = StreamTime.ofSeconds(HOLD_SECONDS);
    private static final StreamTime LEAD = StreamTime.ofSeconds(LEAD_SECONDS);
    private static final StreamTime SETTLING = StreamTime.ofSeconds(0.5);
    private static final StreamTime WINDOW = StreamTime.ofSeconds(10);

    private final Deque<Level> levels = new ArrayDeque<>();
    private final Deque<AudioBlock> heldBack = new ArrayDeque<>();
    private StreamTime openUntil = StreamTime.ZERO;
    private StreamTime loudUntil = StreamTime.ZERO;
    private StreamTime heardTo = StreamTime.ZERO;
    private boolean started;

    private record Level(StreamTime end, double power) {}

    /**
     * Takes a block and returns what the recogniser should hear now, in order. Together with {@link #flush()} as many
     * samples come out as went in.
     */
    public List<short[]> pass(AudioBlock block) {
        if (!started) {
            started = true;
            openUntil = block.start().plus(SETTLING);
            loudUntil = block.start();
        }
        heardTo = block.end();
        double power = power(block.samples());
        remember(new Level(block.end(), power));
        if (power >= threshold()) {
            openUntil = StreamTime.max(openUntil, block.end().plus(HOLD));
            loudUntil = block.end();
        }
        heldBack.add(block);
        List<short[]> out = new ArrayList<>();
        if (block.start().isBefore(openUntil)) {
            heldBack.forEach(b -> out.add(b.samples()));
            heldBack.clear();
        } else {
            while (LEAD.isBefore(block.end().since(heldBack.getFirst().end()))) {
                out.add(new short[heldBack.removeFirst().samples().length]);
            }
        }
        return out;
    }

    /** For how long nothing louder than the room has been heard. */
    public StreamTime quiet() {
        return heardTo.since(loudUntil);
    }

    /** Returns the samples held back, as silence. */
    public List<short[]> flush() {
        List<short[]> out = new ArrayList<>();
        heldBack.forEach(b -> out.add(new short[b.samples().length]));
        heldBack.clear();
        return out;
    }

    private void remember(Level level) {
        levels.add(level);
        while (WINDOW.isBefore(level.end().since(levels.getFirst().end()))) {
            levels.removeFirst();
        }
    }

    private double threshold() {
        double[] sorted = levels.stream().mapToDouble(Level::power).sorted().toArray();
        double room = sorted[sorted.length / 10] * ofDecibels(OPENING_DB);
        return Math.max(ofDecibels(LOWEST_DB), Math.min(ofDecibels(HIGHEST_DB), room));
    }

    /** Variance of the samples, scaled to -1 to 1. */
    private static double power(short[] samples) {
        double sum = 0;
        double squares = 0;
        for (short s : samples) {
            sum += s;
            squares += (double) s * s;
        }
        double mean = sum / samples.length;
        return Math.max(0, squares / samples.length - mean * mean) / (32_768.0 * 32_768.0);
    }

    private static double ofDecibels(double decibels) {
        return Math.pow(10, decibels / 10);
    }
}
