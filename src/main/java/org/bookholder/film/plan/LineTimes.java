package org.bookholder.film.plan;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.WordTime;
import org.bookholder.timing.StreamTime;

/** When each line and each word of a lesson comes in its film. */
final class LineTimes {
    private final Map<Integer, Place> places = new HashMap<>();

    private record Place(FilmClip clip, int index, StreamTime begins, StreamTime ends) {}

    LineTimes(FilmPlan plan) {
        for (FilmClip clip : plan.clips()) {
            StreamTime start = new StreamTime(plan.tickOf(clip.start()));
            for (int i = 0; i < clip.attempts().size() && clip.used(); i++) {
                StreamTime begins = start.plus(clip.begin(i).since(clip.in()));
                // The clip's last picture may end some milliseconds before or after its sound.
                StreamTime ends = i == clip.attempts().size() - 1
                        ? new StreamTime(plan.tickOf(clip.end()))
                        : start.plus(clip.end(i).since(clip.in()));
                int line = clip.attempts().get(i).line();
                Place first = places.get(line);
                // A line that goes on in the next clip began in the one before.
                places.put(
                        line,
                        first == null
                                ? new Place(clip, i, begins, ends)
                                : new Place(first.clip, first.index, first.begins, ends));
            }
        }
    }

    /** When a line begins, in the quiet before it; empty if it is not in the film. */
    Optional<StreamTime> begin(int line) {
        return Optional.ofNullable(places.get(line)).map(Place::begins);
    }

    /** When it ends, in the quiet behind it. */
    Optional<StreamTime> end(int line) {
        return Optional.ofNullable(places.get(line)).map(Place::ends);
    }

    /** When a word is said, or else the next one that is; with the first word the line begins. */
    Optional<StreamTime> word(int line, int word) {
        Place place = places.get(line);
        if (place == null || word <= 1) {
            return begin(line);
        }
        Attempt attempt = place.clip.attempts().get(place.index);
        List<WordTime> words = attempt.words();
        StreamTime said = words.stream()
                .filter(time -> time.word() >= word)
                .map(WordTime::start)
                .findFirst()
                .orElse(attempt.end());
        StreamTime since = StreamTime.max(said, place.clip.begin(place.index)).since(place.clip.begin(place.index));
        return Optional.of(StreamTime.min(place.begins.plus(since), place.ends));
    }
}
