package org.bookholder.course;

import java.time.Duration;
import java.util.Collection;
import java.util.OptionalDouble;
import org.bookholder.pace.RunningTime;
import org.bookholder.pace.WordTally;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;

/**
 * Pace and shooting ratio, measured in the presenter's own sessions.
 *
 * @param reading how long they read in all
 * @param pace words per minute over all sessions, pauses included; empty until there is enough to tell
 * @param ratio recorded time for each minute kept; empty until three minutes are kept
 */
public record Measured(Duration reading, OptionalDouble pace, OptionalDouble ratio) {
    /** Nothing measured yet. */
    public static final Measured NOTHING = new Measured(Duration.ZERO, OptionalDouble.empty(), OptionalDouble.empty());

    private static final double SECONDS_PER_MINUTE = 60;
    private static final int PRIOR_WORDS = 1000;

    /** Our choice: with less than this, a ratio reflects the warm-up more than the presenter. */
    private static final double ENOUGH_MINUTES = 3;

    /** Measures these sessions. The pace is over all their reading, so longer sessions count more. */
    public static Measured of(Collection<RecordedSession> sessions) {
        Duration reading = Duration.ZERO;
        double words = 0;
        double minutes = 0;
        double recorded = 0;
        double kept = 0;
        for (RecordedSession session : sessions) {
            SessionState state = session.state();
            double pace = state.measures().pace().lesson();
            if (!Double.isNaN(pace) && pace > 0) {
                Duration read = state.spent().reading();
                reading = reading.plus(read);
                minutes += minutes(read);
                words += pace * minutes(read);
                recorded += minutes(state.spent().onCamera());
                kept += keptWords(state) / pace;
            }
        }
        return new Measured(
                reading,
                minutes > 0 ? OptionalDouble.of(words / minutes) : OptionalDouble.empty(),
                kept >= ENOUGH_MINUTES ? OptionalDouble.of(Math.max(1, recorded / kept)) : OptionalDouble.empty());
    }

    /**
     * A pace to plan with, in words per minute: a blend of the presenter's own pace and the target. Ten
     * minutes of reading weigh as much as a target of 100.
     *
     * @param target words per minute
     */
    public double likelyPace(double target) {
        long words = Math.round(pace.orElse(0) * minutes(reading));
        return RunningTime.blend(
                WordTally.of(words, StreamTime.ofSeconds(reading.toMillis() / 1000.0)), target, PRIOR_WORDS);
    }

    private static int keptWords(SessionState state) {
        return state.lines().all().stream()
                .filter(notes -> !notes.attempts().isEmpty() && !notes.pickup())
                .mapToInt((LineNotes notes) -> state.line(notes.line()).spokenWords())
                .sum();
    }

    private static double minutes(Duration time) {
        return time.toMillis() / 1000.0 / SECONDS_PER_MINUTE;
    }
}
