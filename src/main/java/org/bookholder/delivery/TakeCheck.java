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
    private final StreamTime begins;
    private final List<SharedStretch> stretches;

    /**
     * Creates one.
     *
     * @param film the film's sound, from its first picture on
     * @param begins when that is in the film's own time
     * @param stretches what takes are heard in it, in order of time
     */
    public TakeCheck(SoundTrack film, StreamTime begins, List<SharedStretch> stretches) {
        this.film = film;
        this.begins = begins;
        this.stretches = List.copyOf(stretches);
    }

    /**
     * What only the film has, in order of time; by the film's own time.
     *
     * @param suspected where the sound may drop out by the film's own time, unless the take does so, too
     */
    public List<Finding> of(List<Finding.Place> suspected) {
        List<Finding> findings = new ArrayList<>();
        new LevelJumps(film).of(stretches).forEach(jump -> findings.add(jump.later(begins)));
        HoleComparison holes = new HoleComparison(film);
        for (Finding.Place place : suspected) {
            long from = sample(place.start());
            long to = sample(place.end());
            Optional<SharedStretch> stretch = stretches.stream()
                    .filter(s -> s.film() <= from && to <= s.end())
                    .findFirst();
            if (stretch.isPresent() && holes.onlyInFilm(stretch.get(), from, to)) {
                findings.add(SoundFinder.dropout(
                        place.start(), place.end(), "the take has no such hole: export it again, or fill the hole"));
            }
        }
        findings.sort(Comparator.comparing(f -> f.place().orElseThrow().start()));
        return findings;
    }

    private long sample(StreamTime time) {
        return Math.floorDiv(time.ticks() - begins.ticks(), SoundTrack.TICKS);
    }

    static Finding at(long from, long to, Grade grade, String kind, String what, String remedy) {
        return Finding.at(time(from), time(to), grade, kind, what, remedy);
    }

    private static StreamTime time(long sample) {
        return StreamTime.ofSamples(sample, SoundTrack.RATE);
    }
}
