package org.bookholder.course.calendar;

import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.CalendarOutputter;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.ParameterList;
import net.fortuna.ical4j.model.Property;
import net.fortuna.ical4j.model.component.VAlarm;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.parameter.Related;
import net.fortuna.ical4j.model.property.Description;
import net.fortuna.ical4j.model.property.DtEnd;
import net.fortuna.ical4j.model.property.DtStamp;
import net.fortuna.ical4j.model.property.DtStart;
import net.fortuna.ical4j.model.property.Sequence;
import net.fortuna.ical4j.model.property.Summary;
import net.fortuna.ical4j.model.property.Trigger;
import net.fortuna.ical4j.model.property.Uid;
import net.fortuna.ical4j.model.property.XProperty;
import net.fortuna.ical4j.model.property.immutable.ImmutableAction;
import net.fortuna.ical4j.model.property.immutable.ImmutableStatus;

/**
 * Events as iCalendar (RFC 5545) and back. Each has an alarm a day and an hour before; the names of its lessons are in a property of the
 * program's own, so that the next plan finds it again.
 */
final class CalendarText {
    private static final String MAKER = "-//Bookholder//Recording sessions//EN";
    private static final String LESSONS = "X-BOOKHOLDER-LESSONS";
    private static final List<Duration> ALARMS = List.of(Duration.ofDays(-1), Duration.ofHours(-1));

    private static final DateTimeFormatter UTC = DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmssX", Locale.ROOT);

    private CalendarText() {}

    /** Writes events. */
    static String of(String summary, List<CalendarEvent> events, Instant now) {
        Calendar calendar = new Calendar().withProdId(MAKER).withDefaults().getFluentTarget();
        events.forEach(event -> calendar.add(component(summary, event, now)));
        try (StringWriter out = new StringWriter()) {
            new CalendarOutputter().output(calendar, out);
            return out.toString();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static VEvent component(String summary, CalendarEvent event, Instant now) {
        VEvent component = new VEvent(false);
        component.add(new DtStamp(now));
        component.add(new Uid(event.uid()));
        component.add(new Sequence(event.sequence()));
        component.add(event.cancelled() ? ImmutableStatus.VEVENT_CANCELLED : ImmutableStatus.VEVENT_CONFIRMED);
        component.add(new DtStart<>(event.start()));
        component.add(new DtEnd<>(event.end()));
        component.add(new Summary(summary));
        component.add(new Description(event.description()));
        component.add(new XProperty(LESSONS, String.join("\n", event.lessons())));
        if (!event.cancelled()) {
            ALARMS.forEach(before -> component.add(alarm(summary, before)));
        }
        return component;
    }

    private static VAlarm alarm(String summary, Duration before) {
        VAlarm alarm = new VAlarm();
        alarm.add(new Trigger(new ParameterList(List.of(Related.START)), before));
        alarm.add(ImmutableAction.DISPLAY);
        alarm.add(new Description(summary));
        return alarm;
    }

    /** The events of a calendar that this program wrote; empty if the text is anything else. */
    static Optional<List<CalendarEvent>> read(String text) {
        try {
            Calendar calendar = new CalendarBuilder().build(new StringReader(text));
            boolean own = calendar.getProperty(Property.PRODID)
                    .map(Property::getValue)
                    .orElse("")
                    .equals(MAKER);
            if (!own) {
                return Optional.empty();
            }
            List<CalendarEvent> events = new ArrayList<>();
            for (var component : calendar.getComponents("VEVENT")) {
                events.add(event((VEvent) component));
            }
            return Optional.of(events);
        } catch (IOException | ParserException | RuntimeException e) {
            return Optional.empty();
        }
    }

    private static CalendarEvent event(VEvent event) {
        return new CalendarEvent(
                value(event, Property.UID),
                Integer.parseInt(event.getProperty(Property.SEQUENCE)
                        .map(Property::getValue)
                        .orElse("0")),
                instant(event, Property.DTSTART),
                instant(event, Property.DTEND),
                value(event, LESSONS).lines().filter(name -> !name.isEmpty()).toList(),
                value(event, Property.DESCRIPTION),
                value(event, Property.STATUS).equals("CANCELLED"));
    }

    private static String value(VEvent event, String name) {
        return event.getProperty(name).map(Property::getValue).orElse("");
    }

    /** RFC 5545, 3.3.5, form 2: a time in UTC. */
    private static Instant instant(VEvent event, String name) {
        return UTC.parse(value(event, name), Instant::from);
    }
}
