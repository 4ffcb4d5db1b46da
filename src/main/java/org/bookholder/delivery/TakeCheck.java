package org.bookholder.delivery;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.footage.SharedStretch;
import org.bookholder.footage.SoundTrack;
import org.bookholder.timing.StreamTime;

/**
 * Compares a film's sound with the takes that it was cut from: what the take has, too, is the reader's, and what only the film has came
 * with the edit or the export. Confined to one thread.
 */
public final class TakeCheck {
    private final SoundTrack film;
    private final List<SharedStretch> stretches;

    /**
     * Creates one.
     *
     * @param film the film's sound, from its first picture on
     * @param stretches what takes are heard in it, in order of time
     */
    public TakeCheck(SoundTrack film, List<SharedStretch> stretches) {
        this.film = film;
        this.stretches = List.copyOf(stretches);
    }

    /**
     * What only the film has, in order of time.
     *
     * @param suspected where the sound may drop out, unless the take does so, too
     */
    public List<Finding> of(List<Finding.Place> suspected) {
        List<Finding> findings = new ArrayList<>(new LevelJumps(film).of(stretches));
        HoleComparison holes = new HoleComparison(film);
        for (Finding.Place place : suspected) {
            Optional<SharedStretch> stretch = stretches.stream()
                    .filter(s -> s.film() <= sample(place.start()) && sample(place.end()) <= s.end())
                    .findFirst();
            if (stretch.isPresent() && holes.onlyInFilm(stretch.get(), sample(place.start()), sample(place.end()))) {
                findings.add(SoundFinder.dropout(
                        place.start(), place.end(), "the take has no such hole: export it again, or fill the hole"));
            }
        }
        findings.sort(Comparator.comparing(f -> f.place().orElseThrow().start()));
        return findings;
    }

    static long sample(StreamTime time) {
        return time.ticks() / SoundTrack.TICKS;
    }

    static Finding at(long from, long to, Grade grade, String kind, String what, String remedy) {
        return Finding.at(time(from), time(to), grade, kind, what, remedy);
    }

    private static StreamTime time(long sample) {
        return StreamTime.ofSamples(sample, SoundTrack.RATE);
    }
}
