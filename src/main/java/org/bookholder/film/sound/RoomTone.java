package org.bookholder.film.sound;

import java.util.List;
import java.util.Optional;

/**
 * The sound of a room in which nobody speaks, as long as it is needed, made of what was recorded in pauses.
 *
 * <p>Short grains from random places of the pauses fade into one another, at equal power, as noise of different moments is
 * uncorrelated. Each is played forwards or backwards and either way up by chance, so that nothing is heard to come again, however
 * little was recorded. Every sample follows from its number alone.
 */
final class RoomTone {
    /** Half the length of a grain, in samples: 100 ms; less where pauses are short. */
    private static final int HOP = 4800;

    private static final int SHORTEST_HOP = 600;

    /** A grain is no longer than this share of the longest pause, or it would always be the same one. */
    private static final int SHARE = 3;

    private final List<float[]> quiet;
    private final int hop;
    private final long places;

    private RoomTone(List<float[]> quiet, int hop) {
        this.quiet = quiet;
        this.hop = hop;
        this.places = quiet.stream().mapToLong(this::places).sum();
    }

    /**
     * The tone of a room.
     *
     * @param quiet what was recorded in pauses, 48,000 samples a second
     * @return empty if no pause is long enough
     */
    static Optional<RoomTone> of(List<float[]> quiet) {
        int longest = quiet.stream().mapToInt(pause -> pause.length).max().orElse(0);
        int hop = Math.min(HOP, longest / (2 * SHARE));
        return hop < SHORTEST_HOP ? Optional.empty() : Optional.of(new RoomTone(List.copyOf(quiet), hop));
    }

    /** How many grains a pause has. */
    private long places(float[] pause) {
        return Math.max(0, pause.length - 2L * hop);
    }

    /** The sample with that number. */
    float at(long sample) {
        long grain = Math.floorDiv(sample, hop);
        int inside = (int) Math.floorMod(sample, (long) hop);
        double turn = Math.PI / 2 * (inside + 0.5) / hop;
        return (float) (Math.sin(turn) * grain(grain, inside) + Math.cos(turn) * grain(grain - 1, hop + inside));
    }

    private float grain(long number, int inside) {
        long chance = mixed(number);
        long place = Long.remainderUnsigned(chance >>> 2, places);
        int from = (chance & 1) == 0 ? inside : 2 * hop - 1 - inside;
        float sign = (chance & 2) == 0 ? 1 : -1;
        for (float[] pause : quiet) {
            long own = places(pause);
            if (place < own) {
                return sign * pause[(int) place + from];
            }
            place -= own;
        }
        throw new IllegalStateException("a place beyond all pauses: " + place);
    }

    /** A number that looks like chance and is always the same: the finisher of SplitMix64 (Steele, Lea, Flood 2014). */
    private static long mixed(long number) {
        long mixed = (number + 1) * 0x9E3779B97F4A7C15L;
        mixed = (mixed ^ (mixed >>> 30)) * 0xBF58476D1CE4E5B9L;
        mixed = (mixed ^ (mixed >>> 27)) * 0x94D049BB133111EBL;
        return mixed ^ (mixed >>> 31);
    }
}
