package org.bookholder.course.calendar;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * An event of a calendar: a recording session, or one that is no longer planned.
 *
 * @param uid names it for good; a calendar program replaces the event that has the same
 * @param sequence how often it has changed, from 0
 * @param start when it begins
 * @param end when it ends
 * @param lessons names of the lessons that are read in it
 * @param description what happens in it, line by line
 * @param cancelled whether it is no longer planned
 */
record CalendarEvent(
        String uid,
        int sequence,
        Instant start,
        Instant end,
        List<String> lessons,
        String description,
        boolean cancelled) {
    /** Copies the list. */
    CalendarEvent {
        lessons = List.copyOf(lessons);
    }

    /** How many of its lessons are also those of another event. */
    int shared(CalendarEvent other) {
        Set<String> both = new HashSet<>(lessons);
        both.retainAll(new HashSet<>(other.lessons));
        return both.size();
    }

    /** This event as the later form of {@code known}. */
    CalendarEvent after(CalendarEvent known) {
        boolean same = start.equals(known.start)
                && end.equals(known.end)
                && description.equals(known.description)
                && cancelled == known.cancelled;
        return new CalendarEvent(
                known.uid, same ? known.sequence : known.sequence + 1, start, end, lessons, description, cancelled);
    }

    /** The same, no longer planned. */
    CalendarEvent asCancelled() {
        return cancelled ? this : new CalendarEvent(uid, sequence + 1, start, end, lessons, description, true);
    }
}
