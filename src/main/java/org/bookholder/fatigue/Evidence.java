package org.bookholder.fatigue;

import java.time.Duration;
import org.bookholder.fatigue.BreakAdvice.Reason;
import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.timing.StreamTime;

/** Judges whether the reader stumbles more, or reads at another pace, than at the beginning of the day. */
final class Evidence {
    /** Ratio of fluff rates from which a break is advised as coming. */
    private static final double MORE = 1.5;

    private static final double MUCH_MORE = 2;
    private static final double DRIFT = 0.15;
    private static final double MUCH_DRIFT = 0.25;

    /**
     * Least difference of the two rates in standard deviations, by the usual test of two proportions. The test runs
     * once per line over a session, so a lower threshold would be crossed by chance.
     */
    private static final double SURE = 2.5;

    private Evidence() {}

    static BreakAdvice advice(Stumbling stumbling, StreamTime now) {
        if (!stumbling.comparable(now)) {
            return advice(Urgency.NONE, new AdviceFigures.TooLittle());
        }
        StumbleTally recent = stumbling.recent(now);
        StumbleTally first = stumbling.baseline();
        Urgency fluffs = fluffs(recent, first);
        Urgency pace = pace(recent, first);
        if (fluffs.compareTo(pace) >= 0) {
            return advice(fluffs, new AdviceFigures.Fluffs(stumbling.recentRate(now), stumbling.baselineRate()));
        }
        return advice(
                pace,
                new AdviceFigures.Pace(
                        recent.spoken().perMinute(), first.spoken().perMinute()));
    }

    private static BreakAdvice advice(Urgency urgency, AdviceFigures figures) {
        return new BreakAdvice(Reason.STUMBLING, urgency, Duration.ZERO, figures);
    }

    private static Urgency fluffs(StumbleTally recent, StumbleTally first) {
        double now = (double) recent.fluffs() / recent.spoken().words();
        double then = (double) first.fluffs() / first.spoken().words();
        if (deviations(recent, first) < SURE || now < MORE * then) {
            return Urgency.NONE;
        }
        return now >= MUCH_MORE * then ? Urgency.DUE : Urgency.COMING;
    }

    /** Difference of the rates, in standard deviations of that difference if both had the same true rate. */
    private static double deviations(StumbleTally recent, StumbleTally first) {
        double n = recent.spoken().words();
        double m = first.spoken().words();
        double both = (recent.fluffs() + first.fluffs()) / (n + m);
        if (both <= 0 || both >= 1) {
            return 0;
        }
        return (recent.fluffs() / n - first.fluffs() / m) / Math.sqrt(both * (1 - both) * (1 / n + 1 / m));
    }

    private static Urgency pace(StumbleTally recent, StumbleTally first) {
        double drift = Math.abs(recent.spoken().perMinute() / first.spoken().perMinute() - 1);
        if (!(drift >= DRIFT)) {
            return Urgency.NONE;
        }
        return drift >= MUCH_DRIFT ? Urgency.DUE : Urgency.COMING;
    }
}
