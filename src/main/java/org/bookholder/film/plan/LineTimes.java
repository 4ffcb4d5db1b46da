package org.bookholder.film.plan;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.bookholder.cutlist.CoverSpan;
import org.bookholder.follow.model.Attempt;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;

/** In which picture of its film each line and each word of a lesson comes. */
final class LineTimes implements CoverSpan.LineFrames {
    private final FrameRate rate;
    private final Map<Integer, Place> places = new HashMap<>();

    private record Place(FilmClip clip, int index, StreamTime begins, StreamTime ends) {}

    LineTimes(FilmPlan plan) {
        rate = plan.rate();
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

    @Override
    public Optional<Long> begin(int line) {
        return Optional.ofNullable(places.get(line)).map(place -> frame(place.begins));
    }

    @Override
    public Optional<Long> end(int line) {
        return Optional.ofNullable(places.get(line)).map(place -> frame(place.ends));
    }

    @Override
    public Optional<Long> word(int line, int word) {
        Place place = places.get(line);
        if (place == null || word <= 1) {
            return begin(line);
        }
        Attempt attempt = place.clip.attempts().get(place.index);
        StreamTime since = StreamTime.max(attempt.startOf(word), place.clip.begin(place.index))
                .since(place.clip.begin(place.index));
        return Optional.of(frame(StreamTime.min(place.begins.plus(since), place.ends)));
    }

    private long frame(StreamTime time) {
        return rate.nearestFrame(time.ticks());
    }
}
