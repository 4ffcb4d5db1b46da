package org.bookholder.delivery;

import org.bookholder.footage.SharedStretch;
import org.bookholder.footage.SoundTrack;
import org.bookholder.sound.Decibels;

/** Says whether a hole in a film's sound is in the take, too. Confined to one thread. */
final class HoleComparison {
    private static final int MILLISECOND = SoundTrack.RATE / 1000;

    /** What is taken beside the hole. */
    private static final int BESIDE = 6 * MILLISECOND;

    /** The film may lie beside the take by so much. */
    private static final int SLACK = 2 * MILLISECOND;

    /** A hole in the film is so deep at least, in decibels; between the beats of a near voice up to 20.5 were measured. */
    private static final double DEEP = 23;

    /** And deeper than what the take has there by so many; where a take has more room, up to 19 were measured, drop-outs from 17 on. */
    private static final double DEEPER = 15;

    private final SoundTrack film;

    HoleComparison(SoundTrack film) {
        this.film = film;
    }

    /** Whether only the film has a hole between two of its samples. */
    boolean onlyInFilm(SharedStretch stretch, long from, long to) {
        double ours = depth(film, from, to);
        double theirs = -Double.MAX_VALUE;
        for (int off = -SLACK; off <= SLACK; off += MILLISECOND / 2) {
            theirs = Math.max(theirs, depth(stretch.take(), stretch.inTake(from) + off, stretch.inTake(to) + off));
        }
        return ours > DEEP && ours - theirs > DEEPER;
    }

    /** How much softer the loudest millisecond inside is than the softer side, in decibels. */
    private static double depth(SoundTrack sound, long from, long to) {
        float[] before = sound.read(from - BESIDE, BESIDE - MILLISECOND / 2);
        float[] after = sound.read(to + MILLISECOND / 2, BESIDE - MILLISECOND / 2);
        float[] inside = sound.read(from + MILLISECOND, (int) Math.max(MILLISECOND, to - from - 2 * MILLISECOND));
        double loudest = 0;
        for (int at = 0; at + MILLISECOND <= inside.length; at += MILLISECOND / 2) {
            loudest = Math.max(loudest, power(inside, at, at + MILLISECOND));
        }
        double beside = Math.min(power(before, 0, before.length), power(after, 0, after.length));
        return Decibels.ofPower(beside) - Decibels.ofPower(loudest);
    }

    private static double power(float[] samples, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += (double) samples[i] * samples[i];
        }
        return sum / Math.max(1, to - from);
    }
}
