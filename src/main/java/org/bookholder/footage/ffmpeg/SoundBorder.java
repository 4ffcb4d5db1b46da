package org.bookholder.footage.ffmpeg;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.bookholder.footage.Footage;
import org.bookholder.footage.RecordingJoiner;
import org.bookholder.problem.ProblemException;
import org.bookholder.sound.Decibels;

/**
 * Compares the sound at the end of one file with that at the beginning of another, by its level. That can only speak against them:
 * two takes in one room sound alike. Confined to one thread.
 */
public final class SoundBorder implements RecordingJoiner.Border {
    private static final int RATE = FootageSource.RATE;

    /** How much of each file is looked at. */
    private static final int EDGE = RATE / 10;

    /** How much of that is compared: what lies nearest to the border. */
    private static final int NEAREST = RATE / 50;

    /**
     * Of neighbouring stretches that long in the demo's reading 7 in 10,000 differ by more, at stops and starts of the voice; of
     * any two of them a fifth does. In dB.
     */
    private static final double MOST_STEP = 30;

    @Override
    public boolean goesOn(Footage first, Footage then) throws ProblemException {
        short[] before = withoutSilence(reversed(end(first.file())));
        short[] after = withoutSilence(beginning(then.file()));
        if (before.length < NEAREST || after.length < NEAREST) {
            return false;
        }
        return Math.abs(level(before) - level(after)) <= MOST_STEP;
    }

    /** Encoders fill up what they store with digital silence, at both ends. */
    private static short[] withoutSilence(short[] samples) {
        int from = 0;
        while (from < samples.length && samples[from] == 0) {
            from++;
        }
        return Arrays.copyOfRange(samples, from, samples.length);
    }

    private static short[] reversed(short[] samples) {
        short[] reversed = new short[samples.length];
        for (int i = 0; i < samples.length; i++) {
            reversed[i] = samples[samples.length - 1 - i];
        }
        return reversed;
    }

    /** In dB, against any level that is the same for all. */
    private static double level(short[] samples) {
        double squares = 0;
        for (int i = 0; i < NEAREST; i++) {
            squares += (double) samples[i] * samples[i];
        }
        return Decibels.ofPower(squares / NEAREST);
    }

    private static short[] beginning(Path path) throws ProblemException {
        short[] samples = new short[0];
        try (FootageSound sound = FootageSound.open(path, RATE)) {
            Optional<short[]> next = sound.read();
            while (next.isPresent() && samples.length < EDGE) {
                samples = StreamSound.Seam.append(samples, next.get());
                next = sound.read();
            }
        }
        return Arrays.copyOf(samples, Math.min(samples.length, EDGE));
    }

    private static short[] end(Path path) throws ProblemException {
        short[] samples = new short[0];
        try (FootageSound sound = FootageSound.openEnd(path, RATE)) {
            for (Optional<short[]> next = sound.read(); next.isPresent(); next = sound.read()) {
                short[] all = StreamSound.Seam.append(samples, next.get());
                samples = Arrays.copyOfRange(all, Math.max(0, all.length - EDGE), all.length);
            }
        }
        return samples;
    }
}
