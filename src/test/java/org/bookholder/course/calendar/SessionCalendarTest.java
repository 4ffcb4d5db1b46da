package org.bookholder.course.calendar;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.Biweekly;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import java.io.IOException;
import java.io.StringReader;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.CalendarComponent;
import org.bookholder.course.Shooting;
import org.bookholder.course.shoot.RecordingTask;
import org.bookholder.course.shoot.SessionPlan;
import org.bookholder.course.shoot.SessionPlanner;
import org.bookholder.course.shoot.Terms;
import org.junit.jupiter.api.Test;

/** RFC 5545, read back by a library that had no part in writing it. */
final class SessionCalendarTest {
    private static final Instant NOW = Instant.parse("2027-01-20T08:00:00Z");
    private static final ZoneId ZONE = ZoneId.of("Europe/Stockholm");
    private static final LocalDate DAY = LocalDate.of(2027, 7, 1);

    @Test
    void anIndependentParserReadsTheSessionsBack() {
        String text =
                calendar("Wheels; spokes, and\u2014\u00fcber all\u2014a very long title that has to be folded", 25, 60);

        ICalendar calendar = Biweekly.parse(text).first();
        assertThat(calendar.getEvents()).hasSize(1);
        VEvent event = calendar.getEvents().get(0);
        // Ten o'clock in a Stockholm summer.
        assertThat(event.getDateStart().getValue().toInstant()).isEqualTo(Instant.parse("2027-07-01T08:00:00Z"));
        assertThat(event.getDateEnd().getValue().toInstant())
                .isEqualTo(Instant.parse("2027-07-01T08:00:00Z").plus(Duration.ofMinutes(30 + 85 + 20)));
        assertThat(event.getDateTimeStamp().getValue().toInstant()).isEqualTo(NOW);
        assertThat(event.getSummary().getValue())
                .isEqualTo("Recording: Wheels; spokes, and\u2014\u00fcber all\u2014a very long title that has to be"
                        + " folded");
        assertThat(event.getDescription().getValue())
                .startsWith(
                        "10:00 set-up, 30 min\n10:30 lesson-1 (whole), 25 min\n10:55 break, 10 min\n11:05 lesson-2");
        assertThat(calendar.validate(calendar.getVersion()).getWarnings()).isEmpty();
    }

    @Test
    void noLineIsLongerThanSeventyFiveOctetsAndEachEndsInCrLf() {
        String text = calendar(
                "A very long title that goes on, and on, and on, until it has to be folded, twice at least", 25);
        assertThat(text).endsWith("\r\n");
        assertThat(text.split("\r\n", -1)).allMatch(row -> row.length() <= 75).noneMatch(row -> row.contains("\n"));
    }

    /** RFC 5545, 3.8.7.4: the sequence number grows with each change of an event. */
    @Test
    void aSessionKeepsItsEventOnAnotherDayAndUnderAnotherTitle() {
        String before = calendar("Wheels", List.of(DAY, DAY.plusDays(1)), Optional.empty(), 100, 100);
        String after = calendar("Rims", List.of(DAY, DAY.plusDays(8)), Optional.of(before), 100, 100);
        assertThat(uids(after)).containsExactlyElementsOf(uids(before));
        assertThat(sequences(before)).containsExactly(0, 0);
        assertThat(sequences(after)).containsExactly(0, 1);
        assertThat(events(after).get(1).getDateStart().getValue().toInstant())
                .isEqualTo(Instant.parse("2027-07-09T08:00:00Z"));
    }

    /** RFC 5545, 3.8.1.11. */
    @Test
    void aSessionThatIsNoLongerPlannedIsCancelled() {
        String before = calendar("Wheels", List.of(DAY, DAY.plusDays(1)), Optional.empty(), 100, 100);
        String after = calendar("Wheels", List.of(DAY, DAY.plusDays(1)), Optional.of(before), 100);
        assertThat(events(after))
                .extracting(event -> event.getStatus().getValue())
                .containsExactly("CONFIRMED", "CANCELLED");
        assertThat(uids(after)).containsExactlyElementsOf(uids(before));
        assertThat(sequences(after)).containsExactly(0, 1);
        assertThat(events(after).get(1).getAlarms()).isEmpty();
        assertThat(sequences(calendar("Wheels", List.of(DAY), Optional.of(after), 100)))
                .containsExactly(0, 1);
    }

    /** Of calendars written before lessons were noted in them, and of days whose lessons all have changed. */
    @Test
    void aSessionAtTheSameTimeKeepsItsEventIfNoLessonTellsMore() {
        String before = calendar("Wheels", 25).replaceAll("X-BOOKHOLDER-LESSONS:[^\r\n]*\r\n", "");
        assertThat(before).doesNotContain("LESSONS");
        String after = calendar("Wheels", List.of(DAY), Optional.of(before), 25);
        assertThat(uids(after)).containsExactlyElementsOf(uids(before));
    }

    @Test
    void theSessionOfTodayKeepsItsEventWhenItIsOver() {
        Instant evening = Instant.parse("2027-07-01T20:00:00Z");
        String before = calendar("Wheels", 25);
        String after = SessionCalendar.of("Wheels", plan(List.of(DAY), 25), ZONE, evening, Optional.of(before))
                .orElseThrow();
        assertThat(uids(after)).containsExactlyElementsOf(uids(before));
        String next = SessionCalendar.of(
                        "Wheels", plan(List.of(DAY.plusDays(1)), 25), ZONE, evening, Optional.of(before))
                .orElseThrow();
        assertThat(uids(next)).doesNotContainAnyElementsOf(uids(before));
    }

    @Test
    void twoCalendarsHaveNoEventInCommon() {
        assertThat(uids(calendar("Wheels", 25))).doesNotContainAnyElementsOf(uids(calendar("Rims", 25)));
    }

    @Test
    void alarmsComeADayAndAnHourBefore() {
        assertThat(events(calendar("Wheels", 25)).get(0).getAlarms())
                .extracting(alarm -> alarm.getTrigger().getDuration().toString())
                .containsExactly("-P1D", "-PT1H");
    }

    @Test
    void aForeignFileIsNotTakenForACalendarOfSessions() {
        Optional<String> foreign = Optional.of(calendar("Wheels", 25).replace("-//Bookholder//", "-//Somebody else//"));
        assertThat(SessionCalendar.of("Wheels", plan(List.of(DAY), 25), ZONE, NOW, foreign))
                .isEmpty();
        assertThat(SessionCalendar.of("Wheels", plan(List.of(DAY), 25), ZONE, NOW, Optional.of("no calendar")))
                .isEmpty();
    }

    /** The reader of ical4j and that of biweekly see the same. */
    @Test
    void twoParsersReadTheSame() throws IOException, ParserException {
        String text = calendar("Wheels", 25, 60);
        Calendar other = new CalendarBuilder().build(new StringReader(text));
        assertThat(other.validate().getEntries()).isEmpty();
        assertThat(other.<CalendarComponent>getComponents("VEVENT"))
                .singleElement()
                .satisfies(event -> assertThat(
                                event.getProperty("UID").orElseThrow().getValue())
                        .isEqualTo(uids(text).get(0)));
    }

    private static List<VEvent> events(String text) {
        return Biweekly.parse(text).first().getEvents();
    }

    private static List<String> uids(String text) {
        return events(text).stream().map(event -> event.getUid().getValue()).toList();
    }

    private static List<Integer> sequences(String text) {
        return events(text).stream()
                .map(event -> event.getSequence().getValue())
                .toList();
    }

    private static String calendar(String title, int... minutes) {
        return calendar(title, List.of(DAY), Optional.empty(), minutes);
    }

    private static String calendar(String title, List<LocalDate> days, Optional<String> before, int... minutes) {
        return SessionCalendar.of(title, plan(days, minutes), ZONE, NOW, before).orElseThrow();
    }

    private static SessionPlan plan(List<LocalDate> days, int... minutes) {
        List<RecordingTask> works = IntStream.range(0, minutes.length)
                .mapToObj(
                        i -> new RecordingTask(i + 1, "lesson-" + (i + 1), "whole", Duration.ofMinutes(minutes[i]), 0))
                .toList();
        Terms terms =
                new Terms(Duration.ofMinutes(30), Duration.ofMinutes(35), Duration.ofMinutes(10), Duration.ofHours(2));
        Shooting shooting = new Shooting(
                days.stream()
                        .map(day -> new Shooting.Day(day, LocalTime.of(10, 0), Duration.ofHours(4)))
                        .toList(),
                terms.setUp(),
                Optional.empty());
        return SessionPlanner.plan(works, shooting, terms, DAY);
    }
}
