package org.bookholder.app.day;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.fatigue.FatigueReport;

/**
 * When the lessons of a running order are likely to be read, and where a break is advised between them.
 *
 * @param rows lessons and breaks, in order
 * @param end when the last lesson is done
 */
public record DayForecast(List<Row> rows, Instant end) {
    /** HSE advises 5 to 10 minutes away from the screen each hour. */
    static final Duration PAUSE = Duration.ofMinutes(10);

    /** With less than this, a day's ratio tells more of the warm-up than of the presenter: our choice. */
    private static final Duration ENOUGH = Duration.ofMinutes(3);

    /** Copies the list. */
    public DayForecast {
        rows = List.copyOf(rows);
    }

    /**
     * A lesson or a break.
     *
     * @param lesson the lesson's place in the order, from 0; -1 for a break
     * @param at when it begins
     * @param length how long it takes
     */
    public record Row(int lesson, Instant at, Duration length) {
        /** Whether it is a break. */
        public boolean isBreak() {
            return lesson < 0;
        }
    }

    /**
     * Foretells a day. A break comes before the lesson in which the reading or the time at the screen since the last break would
     * pass the limit, and at once if it is past it already.
     *
     * @param now from when on
     * @param report how the day compares with its limits now
     * @param ratio time at the camera for each minute of a lesson's length
     * @param lessons the lengths of the lessons
     */
    public static DayForecast of(
            Instant now, FatigueReport report, FatigueLimits limits, double ratio, List<Duration> lessons) {
        List<Row> rows = new ArrayList<>();
        Duration pause = limits.realBreak().compareTo(PAUSE) > 0 ? limits.realBreak() : PAUSE;
        Instant at = now;
        Duration read = report.readingSinceBreak();
        Duration screen = report.sinceBreak();
        for (int i = 0; i < lessons.size(); i++) {
            Duration length = Duration.ofMillis(Math.round(lessons.get(i).toMillis() * ratio));
            boolean past = read.plus(length).compareTo(limits.voice().due()) > 0
                    || screen.plus(length).compareTo(limits.screen().due()) > 0;
            if (past && !read.isZero()) {
                rows.add(new Row(-1, at, pause));
                at = at.plus(pause);
                read = Duration.ZERO;
                screen = Duration.ZERO;
            }
            rows.add(new Row(i, at, length));
            at = at.plus(length);
            read = read.plus(length);
            screen = screen.plus(length);
        }
        return new DayForecast(rows, at);
    }

    /**
     * The time that the day took for each minute of what was read in it, without its breaks, at least 1.
     *
     * @param usual the ratio while too little was read
     */
    public static double ratio(Day day, double usual) {
        Duration read = day.sessions().stream().map(DaySession::length).reduce(Duration.ZERO, Duration::plus);
        if (read.compareTo(ENOUGH) < 0) {
            return usual;
        }
        Duration rests = day.rests().stream().map(Day.Rest::length).reduce(Duration.ZERO, Duration::plus);
        Instant from = day.sessions().get(0).began();
        Instant to = day.sessions().stream()
                .map(DaySession::ended)
                .max(Instant::compareTo)
                .orElse(from);
        Duration taken = Duration.between(from, to).minus(rests);
        return Math.max(1, (double) taken.toMillis() / read.toMillis());
    }
}
