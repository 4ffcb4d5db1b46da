package org.bookholder.app.day;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.fatigue.FatigueReport;

/**
 * What a presenter has read since the last long rest, in all sessions.
 *
 * @param presenter the presenter's name
 * @param sessions the sessions, in the order in which they began on the day; empty if nothing was read
 * @param rests the rests between takes that count as breaks, in order
 * @param now the time of day for which this holds
 * @param report how the day compares with the limits, the rest up to now included
 * @param unreadable why a session could not be read, a line each
 */
public record Day(
        String presenter,
        List<DaySession> sessions,
        List<Rest> rests,
        Instant now,
        FatigueReport report,
        List<String> unreadable) {
    /** Copies the lists. */
    public Day {
        sessions = List.copyOf(sessions);
        rests = List.copyOf(rests);
        unreadable = List.copyOf(unreadable);
    }

    /**
     * A rest.
     *
     * @param from time of day at which it began
     * @param length how long it was
     */
    public record Rest(Instant from, Duration length) {}

    /** Lines that still are to be picked up, of all its sessions. */
    public int pickups() {
        return sessions.stream().mapToInt(DaySession::pickups).sum();
    }

    /** The time since the last take ended; zero if nothing was read. */
    public Duration resting() {
        return sessions.stream()
                .map(DaySession::ended)
                .max(Instant::compareTo)
                .map(ended -> Duration.between(ended, now))
                .filter(rest -> !rest.isNegative())
                .orElse(Duration.ZERO);
    }

    /** The rests between spans of time that are at least as long as {@code least}; the spans in order of their beginning. */
    static List<Rest> rests(List<Span> spans, Duration least) {
        List<Rest> rests = new ArrayList<>();
        Instant until = Instant.MIN;
        for (Span span : spans) {
            if (!until.equals(Instant.MIN)
                    && Duration.between(until, span.from()).compareTo(least) >= 0) {
                rests.add(new Rest(until, Duration.between(until, span.from())));
            }
            until = span.to().isAfter(until) ? span.to() : until;
        }
        return rests;
    }

    /**
     * A span of time in which a take was rolling.
     *
     * @param from its beginning
     * @param to its end
     */
    record Span(Instant from, Instant to) {}
}
