package org.bookholder.film.sound;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.Heard;
import org.bookholder.follow.model.Attempt;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.StreamTime;

/** Finds what was recorded in the pauses of a film's clips, without breaths and noises. Confined to one thread. */
final class QuietFinder {
    /** The times of words are not exact: so many samples beside them are left alone, 60 ms. */
    private static final int GUARD = 2880;

    /** Loudness is looked at over so many samples: 10 ms. */
    private static final int WINDOW = 480;

    /** The level that a quarter of all windows stay below is taken for the room's. */
    private static final double FLOOR = 0.25;

    /** What is louder than the room by more than this factor of its power, 5 dB, is something else. */
    private static final double LOUDER = 3.2;

    /** So many samples are enough for any length of tone: 8 s. */
    private static final int ENOUGH = 8 * StreamTime.TICKS_PER_SECOND;

    private final List<float[]> pauses = new ArrayList<>();
    private int found;

    /** Takes in the pauses of a clip. */
    void add(FilmClip clip, Heard heard, SoundPieces sound) throws ProblemException {
        StreamTime from = clip.in();
        for (Attempt attempt : clip.attempts()) {
            add(clip, heard, sound, from, attempt.start());
            from = attempt.end();
        }
        if (!clip.attempts().isEmpty()) {
            add(clip, heard, sound, from, clip.out());
        }
    }

    private void add(FilmClip clip, Heard heard, SoundPieces sound, StreamTime from, StreamTime to)
            throws ProblemException {
        long first = from.ticks() - clip.in().ticks() + (from.equals(clip.in()) ? 0 : GUARD);
        long end = to.ticks() - clip.in().ticks() - (to.equals(clip.out()) ? 0 : GUARD);
        int count = (int) Math.min(Math.max(0, end - first), ENOUGH - found) / WINDOW * WINDOW;
        if (first < 0 || count == 0) {
            return;
        }
        float[] samples = new float[count];
        long at = Math.round(heard.from() + first * heard.step());
        for (int i = 0; i < count; i++) {
            samples[i] = sound.at(at + i);
        }
        found += count;
        pauses.add(samples);
    }

    /** The stretches of the pauses in which only the room is heard. */
    List<float[]> quiet() {
        double[] powers = pauses.stream()
                .flatMapToDouble(pause -> Arrays.stream(powers(pause)))
                .filter(power -> power > 0)
                .sorted()
                .toArray();
        if (powers.length == 0) {
            return List.of();
        }
        double most = LOUDER * powers[(int) (FLOOR * powers.length)];
        List<float[]> quiet = new ArrayList<>();
        for (float[] pause : pauses) {
            double[] own = powers(pause);
            int from = 0;
            for (int i = 0; i <= own.length; i++) {
                if (i == own.length || own[i] > most || own[i] == 0) {
                    if (i > from) {
                        quiet.add(Arrays.copyOfRange(pause, from * WINDOW, i * WINDOW));
                    }
                    from = i + 1;
                }
            }
        }
        return quiet;
    }

    /** How loud each window is. Steps from sample to sample are taken, as in these the rumble of a room hides nothing. */
    private static double[] powers(float[] pause) {
        double[] powers = new double[pause.length / WINDOW];
        for (int i = 1; i < pause.length; i++) {
            double step = pause[i] - pause[i - 1];
            powers[i / WINDOW] += step * step;
        }
        return powers;
    }
}
