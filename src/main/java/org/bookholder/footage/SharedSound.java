package org.bookholder.footage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.footage.PhaseCorrelator.Peak;

/** Finds out where a film goes on sample by sample with a take, if it is roughly known what it was cut from. Confined to one thread. */
public final class SharedSound {
    private static final int SIZE = 1 << 14;

    /** A second is compared at a time, every half second. */
    private static final int PIECE = SoundTrack.RATE;

    private static final int STEP = PIECE / 2;

    /** Bounds of lines are uncertain by less, and pauses within a line were shortened by less. */
    private static final int REACH = (SIZE - PIECE) / 2;

    /** Chance makes peaks of about 4.5 among so many places. */
    private static final double HEIGHT = 7;

    /** Pieces that differ by more, in samples, are not the same stretch: 0.75 ms. */
    private static final double SLACK = 6;

    private final PhaseCorrelator correlator = new PhaseCorrelator(SIZE);
    private final SoundTrack film;

    /** Creates one for a film's sound. */
    public SharedSound(SoundTrack film) {
        this.film = film;
    }

    /**
     * A reading that may be the one that is heard.
     *
     * @param take the sound of its take
     * @param from its first sample, roughly
     */
    public record Candidate(SoundTrack take, long from) {}

    /**
     * The stretches of a part of the film, in order; those with the reading that is found in the most pieces of it.
     *
     * @param from the first sample of the part
     * @param to the sample after its last
     */
    public List<SharedStretch> stretches(long from, long to, List<Candidate> readings) {
        List<SharedStretch> best = List.of();
        for (Candidate reading : readings) {
            List<SharedStretch> found = stretches(from, to, reading);
            if (shared(found) > shared(best)) {
                best = found;
            }
        }
        return best;
    }

    private static long shared(List<SharedStretch> stretches) {
        return stretches.stream().mapToLong(SharedStretch::length).sum();
    }

    private List<SharedStretch> stretches(long from, long to, Candidate reading) {
        List<SharedStretch> found = new ArrayList<>();
        Optional<SharedStretch> open = Optional.empty();
        for (long at = from; at + PIECE <= to; at += STEP) {
            Optional<Double> ahead = ahead(at, reading.take(), reading.from() - from);
            if (open.isPresent()
                    && ahead.isPresent()
                    && Math.abs(ahead.get() - open.get().ahead()) <= SLACK) {
                SharedStretch before = open.get();
                open = Optional.of(
                        new SharedStretch(before.film(), at + PIECE - before.film(), before.ahead(), before.take()));
            } else {
                open.filter(SharedSound::sure).ifPresent(found::add);
                long start = at;
                open = ahead.map(samples -> new SharedStretch(start, PIECE, samples, reading.take()));
            }
        }
        open.filter(SharedSound::sure).ifPresent(found::add);
        return found;
    }

    /** One piece alone may be chance. */
    private static boolean sure(SharedStretch stretch) {
        return stretch.length() > PIECE;
    }

    private Optional<Double> ahead(long at, SoundTrack take, long about) {
        long first = at + about - REACH;
        float[] whole = correlator.spectrum(take.read(first, PIECE + 2 * REACH));
        Peak peak = correlator.find(whole, correlator.spectrum(film.read(at, PIECE)), 0, 2 * REACH);
        return peak.height() < HEIGHT ? Optional.empty() : Optional.of(first + peak.lag() - at);
    }
}
