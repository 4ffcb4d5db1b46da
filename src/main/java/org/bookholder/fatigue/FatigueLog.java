package org.bookholder.fatigue;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.fatigue.BreakAdvice.Reason;
import org.bookholder.fatigue.FatigueLimits.Limit;
import org.bookholder.follow.model.Attempt;
import org.bookholder.pace.PaceOfLine;
import org.bookholder.timing.StreamTime;

/** The data from which a fatigue report is made, counted over the day; grows by at most one entry per minute. Immutable. */
public final class FatigueLog {
    private final FatigueLimits limits;
    private final FatigueClocks clocks;
    private final Stumbling stumbling;

    private FatigueLog(FatigueLimits limits, FatigueClocks clocks, Stumbling stumbling) {
        this.limits = limits;
        this.clocks = clocks;
        this.stumbling = stumbling;
    }

    /** The log at the beginning of a day. */
    public static FatigueLog begin(FatigueLimits limits) {
        return new FatigueLog(limits, FatigueClocks.START, Stumbling.NONE);
    }

    /** Adds time; {@code length} is not negative. */
    public FatigueLog advance(Duration length, FatigueClocks.Doing doing) {
        return new FatigueLog(limits, clocks.advance(length, doing, limits), stumbling);
    }

    /** The log of a day on which something was read before this session, which goes on at {@code now}. */
    public FatigueLog after(EarlierReading earlier, StreamTime now) {
        return new FatigueLog(limits, earlier.clocks(), Stumbling.after(earlier, now));
    }

    /** How the day compares with its limits after {@code rest} since what was read on it. */
    public static FatigueReport report(FatigueLimits limits, EarlierReading day, Duration rest) {
        return begin(limits)
                .after(day, StreamTime.ZERO)
                .advance(rest, FatigueClocks.Doing.RESTING)
                .newDayIfRested(StreamTime.ZERO)
                .report(StreamTime.ZERO);
    }

    /** What there is to go on from in another session of the day; {@code now} is the audio captured so far. */
    public EarlierReading earlier(StreamTime now) {
        return stumbling.earlier(clocks, now);
    }

    /**
     * Adds a rest by time of day; after a long one a new day begins.
     *
     * @param since when it began; empty if there was none
     * @param until when it ended
     * @param now the audio captured so far
     */
    public FatigueLog rested(Optional<Instant> since, Instant until, StreamTime now) {
        return since.map(begun -> Duration.between(begun, until))
                .filter(rest -> !rest.isNegative())
                .map(rest -> advance(rest, FatigueClocks.Doing.RESTING).newDayIfRested(now))
                .orElse(this);
    }

    /** The log of a new day if the current rest has been long enough for one, else the same. */
    public FatigueLog newDayIfRested(StreamTime now) {
        boolean over = clocks.rest().compareTo(limits.recovery()) >= 0;
        return over ? new FatigueLog(limits, FatigueClocks.START, Stumbling.from(now)) : this;
    }

    /** Adds a settled attempt. */
    public FatigueLog plus(Attempt attempt, PaceOfLine pace) {
        return new FatigueLog(limits, clocks, stumbling.plus(attempt, pace));
    }

    /** Removes an attempt that was added before. */
    public FatigueLog minus(Attempt attempt, PaceOfLine pace) {
        return new FatigueLog(limits, clocks, stumbling.minus(attempt, pace));
    }

    /** The report; {@code now} is the audio captured so far. */
    public FatigueReport report(StreamTime now) {
        FatigueClocks c = clocks.upToNow(limits);
        List<BreakAdvice> advice = Stream.of(
                        advice(Reason.VOICE, limits.voice(), c.readingSinceBreak(), c.rested()),
                        advice(Reason.SCREEN, limits.screen(), c.sinceBreak(), c.rested()),
                        advice(Reason.READING, limits.reading(), c.reading(), c.rested()),
                        advice(Reason.ON_CAMERA, limits.onCamera(), c.onCamera(), c.rested()),
                        Evidence.advice(stumbling, now))
                .sorted(Comparator.comparing(BreakAdvice::urgency).reversed())
                .toList();
        return new FatigueReport(
                c.reading(),
                c.onCamera(),
                c.sinceBreak(),
                c.readingSinceBreak(),
                stumbling.recentRate(now),
                stumbling.baselineRate(),
                advice);
    }

    /** Number of minutes that have an entry. */
    int minutes() {
        return stumbling.minutes().size();
    }

    private static BreakAdvice advice(Reason reason, Limit limit, Duration elapsed, boolean rested) {
        return new BreakAdvice(
                reason,
                limit.urgency(elapsed),
                limit.due().minus(elapsed),
                new AdviceFigures.Clock(elapsed, limit, rested));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FatigueLog log
                && limits.equals(log.limits)
                && clocks.equals(log.clocks)
                && stumbling.equals(log.stumbling);
    }

    @Override
    public int hashCode() {
        return clocks.hashCode() * 31 + stumbling.hashCode();
    }
}
