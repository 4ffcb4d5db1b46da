package org.bookholder.footage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.footage.PhaseCorrelator.Peak;
import org.bookholder.timing.StreamTime;

/**
 * Finds where a take lies in a file of footage by the sound of both.
 *
 * <p>A rough search for pieces of the file anywhere in the take, then many short windows, each measured for itself; a
 * straight line through them gives the place and the drift of the clocks. How many of the windows lie on the line is
 * the confidence. Confined to one thread.
 */
public final class FootageMatcher {
    /** The least confidence at which a match is accepted. */
    public static final double BELIEVED = 0.5;

    /** Less than this many seconds of a take are too little to be compared. */
    public static final double SHORTEST = 2;

    private static final int WINDOW = 1 << 15;
    private static final int PIECE = 2 * SoundTrack.RATE;
    private static final int MOST_WINDOWS = 60;

    /** The least number of windows for a match. */
    private static final int LEAST_WINDOWS = 4;

    /** How far a window may lie from the line, in samples: 1.5 ms. */
    private static final double SLACK = 0.0015 * SoundTrack.RATE;

    /** How far from where the rough search puts it a window is looked for, besides drift, in samples. */
    private static final int REACH = (int) (0.02 * SoundTrack.RATE);

    /** A window with less than this share of the mean energy has no voice in it. */
    private static final double QUIET = 0.1;

    private static final double MILLIARDTHS = 1e9;

    private final CoarseSearch rough = new CoarseSearch();
    private final PhaseCorrelator correlator = new PhaseCorrelator(WINDOW);
    private final DirectPathFinder direct = new DirectPathFinder(correlator);

    /**
     * Finds a take by pieces of the file; a short one may lie between them.
     *
     * @param film the file's sound, from the file's first picture on
     * @param take the take's sound
     * @param number take number, from 1
     * @param takeStart where the take begins on the session's audio
     * @return where it lies; empty if the two have nothing in common, or too little to be believed
     */
    public Optional<Placement> match(SoundTrack film, SoundTrack take, int number, StreamTime takeStart) {
        return believed(film, take, rough.search(film, take))
                .map(measured -> placement(film, take, number, takeStart, measured));
    }

    /** Whether a take is short against the file, so that it may lie between the pieces of it. */
    public static boolean isShort(SoundTrack film, SoundTrack take) {
        return CoarseSearch.isShort(film, take);
    }

    /**
     * Finds a take that is short against the file by pieces of the take; empty for a longer one. The longer the part of the file
     * in which it is looked for, the longer this lasts.
     *
     * @param from the first sample of the file at which the take may begin; negative if it may begin before the file
     * @param to the last one
     */
    public Optional<Placement> matchShort(
            SoundTrack film, SoundTrack take, int number, StreamTime takeStart, long from, long to) {
        return believed(film, take, rough.searchShort(film, take, from, to))
                .map(measured -> placement(film, take, number, takeStart, measured));
    }

    private Optional<Measured> believed(SoundTrack film, SoundTrack take, List<CoarseSearch.Find> finds) {
        return line(film, take, finds).filter(measured -> measured.confidence() >= BELIEVED);
    }

    private record Measured(ClockFit line, double confidence) {}

    /** The line by which the file's time goes with the take's; near what the rough search found. */
    private Optional<Measured> line(SoundTrack film, SoundTrack take, List<CoarseSearch.Find> finds) {
        if (finds.isEmpty()) {
            return Optional.empty();
        }
        long from = Math.max(0, (long) finds.get(0).gain());
        long to = Math.min(take.length(), film.length() + (long) finds.get(0).gain());
        int piece = (int) Math.min(PIECE, (to - from) / LEAST_WINDOWS);
        if (piece < SHORTEST / LEAST_WINDOWS * SoundTrack.RATE) {
            return Optional.empty();
        }
        List<ClockFit.Point> points = new ArrayList<>();
        for (long at : places(take, from, to, piece)) {
            points.add(measure(film, take, at, piece, CoarseSearch.Find.nearest(finds, at)));
        }
        return ClockFit.through(points, SLACK)
                .filter(line -> line.points() >= LEAST_WINDOWS)
                .map(line -> measured(film, take, line, points, piece));
    }

    /** What most windows agree on may be an echo; the voice itself comes before it. */
    private Measured measured(SoundTrack film, SoundTrack take, ClockFit line, List<ClockFit.Point> points, int piece) {
        DirectPathFinder.Found voice = direct.look(film, take, line, ClockFit.near(points, line, SLACK), piece);
        double share = (double) line.points() / points.size();
        return new Measured(line.earlier(voice.lead()), share * (1 - voice.doubt()));
    }

    /** Over hours clocks drift by more than a window has room for; from the nearest find to here they do not. */
    private ClockFit.Point measure(SoundTrack film, SoundTrack take, long at, int piece, CoarseSearch.Find near) {
        int drift = (int) (ClockFit.MOST_DRIFT * Math.abs(at - near.found()));
        int reach = Math.min((WINDOW - piece) / 2, REACH + drift);
        long from = (long) (at - near.gain()) - reach;
        float[] whole = correlator.spectrum(film.read(from, piece + 2 * reach));
        Peak peak = correlator.find(whole, correlator.spectrum(take.read(at, piece)), 0, 2 * reach);
        return new ClockFit.Point(at, from + peak.lag());
    }

    /** Windows with a voice in them, spread over what take and film have in common. */
    private static List<Long> places(SoundTrack take, long from, long to, int piece) {
        long step = Math.max(piece, (to - from) / MOST_WINDOWS);
        List<Long> all = new ArrayList<>();
        List<Double> energies = new ArrayList<>();
        for (long at = from; at + piece <= to; at += step) {
            all.add(at);
            energies.add(CoarseSearch.energy(take.read(at, piece)));
        }
        double mean = energies.stream().mapToDouble(e -> e).average().orElse(0);
        List<Long> places = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (energies.get(i) >= QUIET * mean && energies.get(i) > 0) {
                places.add(all.get(i));
            }
        }
        return places;
    }

    private static Placement placement(
            SoundTrack film, SoundTrack take, int number, StreamTime takeStart, Measured measured) {
        ClockFit line = measured.line();
        double first = Math.max(0, -line.start() / (1 + line.drift()));
        double last = Math.min((double) take.length(), (film.length() - line.start()) / (1 + line.drift()));
        return new Placement(
                number,
                takeStart,
                ticks(line.start()),
                Math.round(line.drift() * MILLIARDTHS),
                takeStart.plus(new StreamTime(ticks(first))),
                takeStart.plus(new StreamTime(Math.max(ticks(first), ticks(last)))),
                measured.confidence());
    }

    private static long ticks(double samples) {
        return Math.round(samples * StreamTime.TICKS_PER_SECOND / SoundTrack.RATE);
    }
}
