package org.bookholder.course.calendar;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Finds, for the sessions of a new plan, the events that a calendar already has for them: the one with the most lessons in common, of
 * equal ones the nearest in time; if none has any, the one that begins at the same time. What is left of the events that are still to
 * come is cancelled.
 */
final class EventMatcher {
    private EventMatcher() {}

    private record Pair(CalendarEvent planned, CalendarEvent known) {
        int shared() {
            return planned.shared(known);
        }

        /** An event that is over stays where it was, so only a session at that very time can be it. */
        boolean match(Instant now) {
            boolean coming = known.end().isAfter(now);
            return (coming && shared() > 0) || planned.start().equals(known.start());
        }

        long secondsApart() {
            return Math.abs(planned.start().getEpochSecond() - known.start().getEpochSecond());
        }
    }

    /**
     * The events of the calendar to write, in order of time.
     *
     * @param planned the sessions, with names of their own
     * @param known the events of the calendar before
     * @param now events that have ended by then are left as they are in people's calendars
     */
    static List<CalendarEvent> merged(List<CalendarEvent> planned, List<CalendarEvent> known, Instant now) {
        List<CalendarEvent> free = new ArrayList<>(known);
        List<CalendarEvent> open = new ArrayList<>(planned);
        List<CalendarEvent> all = new ArrayList<>();
        List<Pair> pairs = planned.stream()
                .flatMap(session -> known.stream().map(event -> new Pair(session, event)))
                .filter(pair -> pair.match(now))
                .sorted(Comparator.comparingInt(Pair::shared)
                        .reversed()
                        .thenComparingLong(Pair::secondsApart)
                        .thenComparing(pair -> pair.planned().start()))
                .toList();
        for (Pair pair : pairs) {
            if (open.contains(pair.planned()) && free.remove(pair.known())) {
                open.remove(pair.planned());
                all.add(pair.planned().after(pair.known()));
            }
        }
        all.addAll(open);
        free.stream().filter(event -> event.end().isAfter(now)).forEach(event -> all.add(event.asCancelled()));
        all.sort(Comparator.comparing(CalendarEvent::start).thenComparing(CalendarEvent::uid));
        return all;
    }
}
