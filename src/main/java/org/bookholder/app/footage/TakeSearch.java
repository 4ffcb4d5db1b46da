package org.bookholder.app.footage;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import org.bookholder.footage.FootageMatcher;
import org.bookholder.footage.Placement;
import org.bookholder.footage.SoundTrack;
import org.bookholder.footage.StoredTrack;
import org.bookholder.session.Take;
import org.bookholder.timing.StreamTime;

/**
 * Looks for a session's takes in the sound of one file. Long ones are quickly found anywhere. A short one may lie between the pieces
 * that are compared; it is looked for where it must be by the session's clock, once another was found, and all over the file only as
 * long as that is worth it: a file of another day would cost minutes for each take. Confined to one thread.
 */
final class TakeSearch {
    /** Clocks of computers are set in between; a take is looked for so far from where it should begin. */
    private static final Duration ASTRAY = Duration.ofMinutes(5);

    /** How much sound is gone through for short takes before it is given up that one of them is in the file: about a minute's work. */
    private static final Duration GONE_THROUGH = Duration.ofHours(6);

    private final FootageMatcher matcher = new FootageMatcher();
    private final SoundTrack film;
    private final List<Track> tracks;
    private final DoubleConsumer reached;

    /** A take and its sound. */
    record Track(Take take, StoredTrack sound) {}

    /**
     * Creates one.
     *
     * @param reached is told what share of the takes was looked for
     */
    TakeSearch(SoundTrack film, List<Track> tracks, DoubleConsumer reached) {
        this.film = film;
        this.tracks = tracks;
        this.reached = reached;
    }

    /** Where the takes lie that are in the file, in order of takes. */
    List<Placement> placements() {
        List<Placement> found = new ArrayList<>();
        List<Track> left = new ArrayList<>();
        for (Track track : tracks) {
            Take take = track.take();
            Optional<Placement> place = matcher.match(film, track.sound(), take.number(), take.start());
            place.ifPresentOrElse(found::add, () -> left.add(track));
            reached.accept((double) (found.size() + left.size()) / tracks.size());
        }
        if (found.isEmpty()) {
            anywhere(left).ifPresent(found::add);
        }
        if (!found.isEmpty()) {
            Placement known = found.get(0);
            for (Track track : left) {
                if (track.take().number() != known.take()) {
                    near(known, track).ifPresent(found::add);
                }
            }
        }
        found.sort(Comparator.comparingInt(Placement::take));
        return found;
    }

    /** The first of the short takes that is found, the longest first, as they are the most certain. */
    private Optional<Placement> anywhere(List<Track> left) {
        List<Track> longest = left.stream()
                .filter(track -> FootageMatcher.isShort(film, track.sound()))
                .sorted(Comparator.comparingLong((Track track) -> track.sound().length())
                        .reversed())
                .toList();
        double seconds = 0;
        for (Track track : longest) {
            Take take = track.take();
            Optional<Placement> place =
                    matcher.matchShort(film, track.sound(), take.number(), take.start(), 0, film.length());
            seconds += (double) film.length() / SoundTrack.RATE;
            if (place.isPresent() || seconds > GONE_THROUGH.toSeconds()) {
                return place;
            }
        }
        return Optional.empty();
    }

    /**
     * Where a take should begin in the file by the session's clock, in seconds from its beginning.
     *
     * @param known the place of another one
     * @param tracks all takes, that one among them
     */
    static double expected(Placement known, List<Track> tracks, Take take) {
        Take other = tracks.stream()
                .map(Track::take)
                .filter(one -> one.number() == known.take())
                .findFirst()
                .orElseThrow();
        return (double) known.start() / StreamTime.TICKS_PER_SECOND
                + Duration.between(other.when(), take.when()).toMillis() / 1000.0;
    }

    private Optional<Placement> near(Placement known, Track track) {
        Take take = track.take();
        double begin = expected(known, tracks, take);
        long from = (long) ((begin - ASTRAY.toSeconds()) * SoundTrack.RATE);
        long to = (long) ((begin + ASTRAY.toSeconds()) * SoundTrack.RATE);
        return to < 0 || from > film.length()
                ? Optional.empty()
                : matcher.matchShort(film, track.sound(), take.number(), take.start(), from, to);
    }
}
