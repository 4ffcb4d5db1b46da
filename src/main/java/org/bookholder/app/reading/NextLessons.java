package org.bookholder.app.reading;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import org.bookholder.app.day.DayForecast;
import org.bookholder.app.environment.Environment;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.session.SessionState;
import org.bookholder.session.UpNext;

/**
 * The lessons that are left of a running order, and how long they take.
 *
 * @param lessons the lessons after the one that is read
 * @param ratio time at the camera for each minute of a lesson's length
 * @param limits when breaks are advised
 */
public record NextLessons(List<Lesson> lessons, double ratio, FatigueLimits limits) {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final int STEP_MINUTES = 5;

    /** Copies the list. */
    public NextLessons {
        lessons = List.copyOf(lessons);
    }

    /**
     * A lesson that is left.
     *
     * @param title its title
     * @param length how long it will run when it is read
     */
    public record Lesson(String title, Duration length) {}

    /** What follows the lesson in {@code state}, and when the day is likely to end. */
    UpNext after(SessionState state, Instant now, ZoneId zone) {
        List<Duration> lengths = new ArrayList<>();
        lengths.add(state.measures().pace().left().toDuration());
        lessons.forEach(lesson -> lengths.add(lesson.length()));
        Instant end = DayForecast.of(now, state.measures().fatigue(), limits, ratio, lengths)
                .end();
        Lesson next = lessons.isEmpty() ? new Lesson("", Duration.ZERO) : lessons.get(0);
        return new UpNext(
                next.title(), next.length(), Math.max(0, lessons.size() - 1), TIME.format(rounded(end, zone)));
    }

    /** The states of a session, each with what follows it as it was known when the state came. */
    Supplier<SessionState> beside(Supplier<SessionState> states, Environment here) {
        return new ShownStates(
                states, state -> state.with(after(state, here.clock().instant(), here.zone())));
    }

    /** The full five minutes after it: nobody can foretell better, and a figure that changes all the time distracts. */
    private static ZonedDateTime rounded(Instant end, ZoneId zone) {
        long step = Duration.ofMinutes(STEP_MINUTES).toSeconds();
        return Instant.ofEpochSecond((end.getEpochSecond() / step + 1) * step).atZone(zone);
    }
}
