package org.bookholder.fatigue;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * How the day compares with its fatigue limits. Guidance, never a medical claim.
 *
 * @param reading reading time on a day
 * @param onCamera time on camera on a day
 * @param sinceBreak time since the last real break
 * @param readingSinceBreak reading time since the last real break
 * @param fluffs restarts, misreads and broken-off lines per 100 words over the last ten minutes; NaN if too few words
 * @param baselineFluffs the same over the day's first twenty minutes; NaN if too few words
 * @param advice one entry for each reason, even with nothing to say, most urgent first
 */
public record FatigueReport(
        Duration reading,
        Duration onCamera,
        Duration sinceBreak,
        Duration readingSinceBreak,
        double fluffs,
        double baselineFluffs,
        List<BreakAdvice> advice) {
    /** Copies the list. */
    public FatigueReport {
        advice = List.copyOf(advice);
    }

    /** The advice that has something to say. */
    public List<BreakAdvice> warnings() {
        return advice.stream()
                .filter(a -> a.urgency() != BreakAdvice.Urgency.NONE)
                .toList();
    }

    /** Time until the next break for voice or screen is due; negative if overdue. */
    public Optional<Duration> toNextBreak() {
        return advice.stream()
                .filter(a -> a.reason() == BreakAdvice.Reason.VOICE || a.reason() == BreakAdvice.Reason.SCREEN)
                .map(BreakAdvice::left)
                .min(Duration::compareTo);
    }
}
