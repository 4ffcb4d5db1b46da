package org.bookholder.pace;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.timing.StreamTime;

/** The reading time of a whole take, once it is settled completely. */
public final class TakeTime {
    private TakeTime() {}

    /**
     * A stretch of a take.
     *
     * @param start its beginning
     * @param end its end, not before the beginning
     */
    public record Span(StreamTime start, StreamTime end) {}

    /**
     * The time from the first attempt's start to the last one's end, including pauses but not holds and asides. Holds
     * and asides may overlap each other.
     */
    public static StreamTime of(List<Attempt> attempts, List<Aside> asides, List<Span> holds) {
        if (attempts.isEmpty()) {
            return StreamTime.ZERO;
        }
        StreamTime start =
                attempts.stream().map(Attempt::start).reduce(StreamTime::min).orElseThrow();
        StreamTime end =
                attempts.stream().map(Attempt::end).reduce(StreamTime::max).orElseThrow();
        List<Span> left = new ArrayList<>(holds);
        asides.forEach(a -> left.add(new Span(a.start(), a.end())));
        left.sort(Comparator.comparing(Span::start));
        long ticks = 0;
        StreamTime reached = start;
        for (Span span : left) {
            ticks += StreamTime.min(span.start(), end).since(reached).ticks();
            reached = StreamTime.max(reached, span.end());
        }
        return new StreamTime(ticks + end.since(reached).ticks());
    }
}
