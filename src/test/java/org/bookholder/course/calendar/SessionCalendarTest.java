package org.bookholder.course.calendar;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.Biweekly;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.bookholder.course.Shooting;
import org.bookholder.course.shoot.RecordingTask;
import org.bookholder.course.shoot.SessionPlan;
import org.bookholder.course.shoot.SessionPlanner;
import org.bookholder.course.shoot.Terms;
import org.junit.jupiter.api.Test;

/** RFC 5545, read back by a library that had no part in writing it. */
final class SessionCalendarTest {
    private static final Instant NOW = Instant.parse("2027-01-20T08:00:00Z");
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
        assertThat(calendar.validate(calendar.getVersion()).isEmpty()).isTrue();
    }

    @Test
    void noLineIsLongerThanSeventyFiveOctetsAndEachEndsInCrLf() {
        String text = calendar(
                "A very long title that goes on, and on, and on, until it has to be folded, twice at least", 25);
        assertThat(text).endsWith("\r\n");
        assertThat(text.split("\r\n", -1)).allMatch(row -> row.length() <= 75).noneMatch(row -> row.contains("\n"));
    }

    @Test
    void aDayKeepsItsEventWhenThePlanChanges() {
        String before = Biweekly.parse(calendar("Wheels", 25))
                .first()
                .getEvents()
                .get(0)
                .getUid()
                .getValue();
        String after = Biweekly.parse(calendar("Wheels", 25, 60))
                .first()
                .getEvents()
                .get(0)
                .getUid()
                .getValue();
        assertThat(after)
                .isEqualTo(before)
                .isNotEqualTo(Biweekly.parse(calendar("Rims", 25))
                        .first()
                        .getEvents()
                        .get(0)
                        .getUid()
                        .getValue());
    }

    private static String calendar(String title, int... minutes) {
        List<RecordingTask> works = IntStream.range(0, minutes.length)
                .mapToObj(
                        i -> new RecordingTask(i + 1, "lesson-" + (i + 1), "whole", Duration.ofMinutes(minutes[i]), 0))
                .toList();
        Terms terms =
                new Terms(Duration.ofMinutes(30), Duration.ofMinutes(35), Duration.ofMinutes(10), Duration.ofHours(2));
        Shooting shooting = new Shooting(
                List.of(new Shooting.Day(DAY, LocalTime.of(10, 0), Duration.ofHours(4))),
                terms.setUp(),
                Optional.empty());
        SessionPlan plan = SessionPlanner.plan(works, shooting, terms, DAY);
        return SessionCalendar.of(title, plan, ZoneId.of("Europe/Stockholm"), NOW);
    }
}
