package org.bookholder.app.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Collections;
import java.util.List;
import org.bookholder.app.day.DayForecast.Row;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.fatigue.FatigueReport;
import org.bookholder.session.LineCounts;
import org.junit.jupiter.api.Test;

final class DayForecastTest {
    private static final Instant NOW = Instant.parse("2026-03-02T14:00:00Z");
    private static final FatigueLimits LIMITS = FatigueLimits.defaults();

    /** Voice rest is advised at 35 minutes (Titze, Svec and Popolo 2003): six lessons of six minutes pass it in the sixth. */
    @Test
    void theBreakComesBeforeTheLessonInWhichTheSumPassesTheAdvice() {
        DayForecast day = forecast(read(0), 1, Collections.nCopies(7, minutes(6)));
        assertThat(day.rows()).extracting(Row::lesson).containsExactly(0, 1, 2, 3, 4, -1, 5, 6);
        assertThat(day.rows().get(5).at()).isEqualTo(NOW.plus(minutes(30)));
        assertThat(day.end()).isEqualTo(NOW.plus(minutes(7 * 6 + 10)));
    }

    @Test
    void whatWasReadSinceTheLastBreakCounts() {
        DayForecast day = forecast(read(20), 1, List.of(minutes(10), minutes(10)));
        assertThat(day.rows()).extracting(Row::lesson).containsExactly(0, -1, 1);
    }

    @Test
    void anAdviceThatIsDueComesFirst() {
        assertThat(forecast(read(40), 1, List.of(minutes(2))).rows())
                .extracting(Row::lesson)
                .containsExactly(-1, 0);
    }

    @Test
    void aLessonThatIsLongerThanTheLimitNeedsNoBreakBeforeItself() {
        assertThat(forecast(read(0), 1, List.of(minutes(50))).rows())
                .extracting(Row::lesson)
                .containsExactly(0);
    }

    @Test
    void theRatioIsWhatTheDayHasTaken() {
        // 30 minutes passed, 10 of them a break, for 10 minutes of lessons.
        Day day = day(List.of(session(0, 10, 5), session(20, 30, 5)), List.of(new Day.Rest(at(10), minutes(10))));
        double ratio = DayForecast.ratio(day, 1.5);
        assertThat(ratio).isCloseTo(2, within(0.001));
        assertThat(forecast(read(0), ratio, List.of(minutes(6))).end()).isEqualTo(NOW.plus(minutes(12)));
    }

    @Test
    void withLessThanThreeMinutesOfLessonsTheUsualRatioHolds() {
        assertThat(DayForecast.ratio(day(List.of(), List.of()), 1.5)).isEqualTo(1.5);
        assertThat(DayForecast.ratio(day(List.of(session(0, 30, 2)), List.of()), 1.5))
                .isEqualTo(1.5);
    }

    private static DayForecast forecast(FatigueReport report, double ratio, List<Duration> lessons) {
        return DayForecast.of(NOW, report, LIMITS, ratio, lessons);
    }

    private static Day day(List<DaySession> sessions, List<Day.Rest> rests) {
        return new Day("presenter", sessions, rests, NOW, read(0), List.of());
    }

    private static DaySession session(int from, int to, int length) {
        return new DaySession(
                Path.of("session"),
                "A lesson",
                at(from),
                at(to),
                1,
                minutes(to - from),
                new LineCounts(9, 0, 0),
                minutes(length),
                0);
    }

    private static FatigueReport read(int minutes) {
        Duration length = minutes(minutes);
        return new FatigueReport(length, length, length, length, Double.NaN, Double.NaN, List.of());
    }

    private static Instant at(int minutes) {
        return Instant.parse("2026-03-02T13:00:00Z").plus(minutes(minutes));
    }

    private static Duration minutes(int minutes) {
        return Duration.ofMinutes(minutes);
    }
}
