package org.bookholder.course.calendar;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;
import java.util.stream.Collectors;
import net.fortuna.ical4j.data.CalendarOutputter;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.property.Description;
import net.fortuna.ical4j.model.property.DtEnd;
import net.fortuna.ical4j.model.property.DtStamp;
import net.fortuna.ical4j.model.property.DtStart;
import net.fortuna.ical4j.model.property.Summary;
import net.fortuna.ical4j.model.property.Uid;
import org.bookholder.course.Text;
import org.bookholder.course.shoot.PlannedSession;
import org.bookholder.course.shoot.PlannedSession.Slot;
import org.bookholder.course.shoot.PlannedSession.Use;
import org.bookholder.course.shoot.SessionPlan;

/**
 * Recording sessions as iCalendar (RFC 5545), one event for each that has a day. Times are in UTC, which every calendar
 * program shows in its user's own zone. A day keeps its event when the plan changes, so importing the file again moves
 * events instead of duplicating them.
 */
public final class SessionCalendar {
    private SessionCalendar() {}

    /**
     * The calendar.
     *
     * @param title the course's title
     * @param zone the zone in which the sessions' times of day are meant
     * @param now when it is written
     */
    public static String of(String title, SessionPlan plan, ZoneId zone, Instant now) {
        Calendar calendar = new Calendar()
                .withProdId("-//Bookholder//Recording sessions//EN")
                .withDefaults()
                .getFluentTarget();
        plan.sessions().stream()
                .filter(session -> session.date().isPresent())
                .forEach(session -> calendar.add(event(title, session, zone, now)));
        try (StringWriter out = new StringWriter()) {
            new CalendarOutputter().output(calendar, out);
            return out.toString();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static VEvent event(String title, PlannedSession session, ZoneId zone, Instant now) {
        LocalDate day = session.date().orElseThrow();
        Instant start = day.atTime(session.from()).atZone(zone).toInstant();
        VEvent event = new VEvent(false);
        event.add(new DtStamp(now));
        event.add(
                new Uid(UUID.nameUUIDFromBytes((title + "\n" + day).getBytes(StandardCharsets.UTF_8)) + "@bookholder"));
        event.add(new DtStart<>(start));
        event.add(new DtEnd<>(start.plus(session.length())));
        event.add(new Summary("Recording: " + title));
        event.add(new Description(
                session.slots().stream().map(slot -> line(session, slot)).collect(Collectors.joining("\n"))));
        return event;
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
