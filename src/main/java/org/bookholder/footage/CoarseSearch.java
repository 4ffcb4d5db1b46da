package org.bookholder.footage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.bookholder.footage.PhaseCorrelator.Peak;
import org.jspecify.annotations.Nullable;

/** Looks for pieces of one sound anywhere in another, however long, to within some milliseconds. */
final class CoarseSearch {
    private static final int PIECE = 6 * SoundTrack.RATE;
    private static final int WINDOW = 1 << 18;

    /** A piece every so often, between these many. */
    private static final int EVERY = 30 * SoundTrack.RATE;

    private static final int LEAST = 6;
    private static final int MOST = 24;

    /** Chance makes peaks of up to about 5.5 among a million lags. */
    private static final double HEIGHT = 7;

    /** Two places agree if they differ by no more than drift and this. */
    private static final double SLACK = 0.01 * SoundTrack.RATE;

    private final PhaseCorrelator correlator = new PhaseCorrelator(WINDOW);

    /**
     * A piece that was found.
     *
     * @param at where it lies in the sound that it was taken from, in samples
     * @param found where it was found
     * @param height how clearly
     */
    record Find(long at, double found, double height) {
        double gain() {
            return found - at;
        }

        /** The find that lies nearest to a place in the sound in which it was looked for. */
        static Find nearest(List<Find> finds, long place) {
            return finds.stream()
                    .min(Comparator.comparingDouble(find -> Math.abs(find.found() - place)))
                    .orElseThrow();
        }
    }

    /**
     * Where {@code sound} lies in {@code other}, by pieces of it: the clearest find on which others agree, or that is beyond doubt, and
     * those others; empty if there is none.
     */
    List<Find> search(SoundTrack sound, SoundTrack other) {
        return search(sound, other, 0, other.length());
    }

    private List<Find> search(SoundTrack sound, SoundTrack other, long from, long to) {
        List<Find> finds = best(sound, places(sound), other, from, to).stream()
                .filter(find -> find.height() >= HEIGHT)
                .toList();
        Optional<Find> clearest = finds.stream()
                .filter(find -> finds.size() == 1 || agreeing(finds, find).size() > 1 || find.height() > 2 * HEIGHT)
                .max(Comparator.<Find>comparingInt(find -> agreeing(finds, find).size())
                        .thenComparingDouble(Find::height));
        return clearest.map(find -> agreeing(finds, find)).orElse(List.of());
    }

    /**
     * The same for a take that is so short that it may lie between the pieces of the film: pieces of the take are looked for in
     * the film. Empty for a longer one, in which a piece of the film lies whole.
     *
     * @param from the first sample of the film at which the take may begin; negative if it may begin before the film
     * @param to the last one
     */
    List<Find> searchShort(SoundTrack film, SoundTrack take, long from, long to) {
        if (!isShort(film, take)) {
            return List.of();
        }
        long last = Math.min(film.length(), to + take.length());
        return search(take, film, Math.max(0, from), last).stream()
                .map(find -> new Find(Math.round(find.found()), find.at(), find.height()))
                .toList();
    }

    /** Whether no piece of the film may lie whole in the take. */
    static boolean isShort(SoundTrack film, SoundTrack take) {
        return take.length() < 2 * stretch(film);
    }

    private static List<Find> agreeing(List<Find> finds, Find find) {
        return finds.stream()
                .filter(other -> Math.abs(other.gain() - find.gain())
                        <= SLACK + ClockFit.MOST_DRIFT * Math.abs(other.at() - find.at()))
                .toList();
    }

    private static int count(SoundTrack film) {
        return (int) Math.max(LEAST, Math.min(MOST, film.length() / EVERY));
    }

    private static long stretch(SoundTrack film) {
        return Math.max(1, film.length() / count(film));
    }

    /** The liveliest piece of each stretch. */
    private static List<Long> places(SoundTrack film) {
        long stretch = stretch(film);
        List<Long> places = new ArrayList<>();
        for (int i = 0; i < count(film); i++) {
            long from = i * stretch;
            long best = from;
            double most = -1;
            for (long at = from; at == from || at + PIECE <= from + stretch; at += PIECE / 2) {
                double energy = energy(film.read(at, PIECE));
                if (energy > most) {
                    most = energy;
                    best = at;
                }
            }
            places.add(best);
        }
        return places;
    }

    /** Where each piece is found best; the take's spectra, which cost most, are made once for all pieces. */
    private List<Find> best(SoundTrack film, List<Long> places, SoundTrack take, long begin, long end) {
        List<float[]> pieces = places.stream()
                .map(at -> correlator.spectrum(film.read(at, PIECE)))
                .toList();
        @Nullable Find[] best = new Find[places.size()];
        // A piece that begins before the take is found where its end overlaps.
        for (long from = begin - PIECE; from < end; from += WINDOW - PIECE) {
            float[] whole = correlator.spectrum(take.read(from, WINDOW));
            for (int i = 0; i < best.length; i++) {
                Peak peak = correlator.find(whole, pieces.get(i), 0, WINDOW - PIECE);
                if (best[i] == null || peak.height() > best[i].height()) {
                    best[i] = new Find(places.get(i), from + peak.lag(), peak.height());
                }
            }
        }
        return Arrays.stream(best).filter(Objects::nonNull).toList();
    }

    static double energy(float[] samples) {
        double squares = 0;
        for (float sample : samples) {
            squares += (double) sample * sample;
        }
        return squares;
    }
}
