package org.bookholder.course.calendar;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.bookholder.course.Text;
import org.bookholder.course.shoot.PlannedSession;
import org.bookholder.course.shoot.PlannedSession.Slot;
import org.bookholder.course.shoot.PlannedSession.Use;
import org.bookholder.course.shoot.RecordingTask;
import org.bookholder.course.shoot.SessionPlan;

/**
 * Recording sessions as iCalendar (RFC 5545), one event for each that has a day. Times are in UTC, which every calendar program shows
 * in its user's own zone. A session keeps its event when the plan moves it ({@link EventMatcher}), whatever the course is called
 * by then, so importing the calendar again moves events; what is no longer planned is cancelled.
 */
public final class SessionCalendar {
    private SessionCalendar() {}

    /**
     * The calendar.
     *
     * @param title the course's title
     * @param zone the zone in which the sessions' times of day are meant
     * @param now when it is written
     * @param before the calendar as it was written before; empty if it never was
     * @return nothing if {@code before} is not a calendar that this program wrote
     */
    public static Optional<String> of(
            String title, SessionPlan plan, ZoneId zone, Instant now, Optional<String> before) {
        Optional<List<CalendarEvent>> known =
                before.isEmpty() ? Optional.of(List.of()) : CalendarText.read(before.get());
        List<CalendarEvent> planned = plan.sessions().stream()
                .filter(session -> session.date().isPresent())
                .map(session -> event(title, session, zone, now))
                .toList();
        return known.map(
                events -> CalendarText.of("Recording: " + title, EventMatcher.merged(planned, events, now), now));
    }

    private static CalendarEvent event(String title, PlannedSession session, ZoneId zone, Instant now) {
        LocalDate day = session.date().orElseThrow();
        Instant start = day.atTime(session.from()).atZone(zone).toInstant();
        List<String> lessons =
                session.works().stream().map(RecordingTask::name).distinct().toList();
        // Only of the first time: what is known from before keeps its name.
        String first = String.join("\n", title, now.toString(), day.toString(), String.join("\n", lessons));
        return new CalendarEvent(
                UUID.nameUUIDFromBytes(first.getBytes(StandardCharsets.UTF_8)) + "@bookholder",
                0,
                start,
                start.plus(session.length()),
                lessons,
                session.slots().stream().map(slot -> line(session, slot)).collect(Collectors.joining("\n")),
                false);
    }

    private static String line(PlannedSession session, Slot slot) {
        String what = slot.use() == Use.READING
                ? slot.work().orElseThrow().name() + " ("
                        + slot.work().orElseThrow().what() + ")"
                : slot.use() == Use.BREAK ? "break" : "set-up";
        Duration length = slot.length();
        return session.from().plus(slot.start()) + " " + what + ", " + Text.hours(length);
    }
}
