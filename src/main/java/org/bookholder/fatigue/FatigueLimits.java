package org.bookholder.fatigue;

import java.time.Duration;

/**
 * When a break is advised. Guidance that people set for themselves, never a medical claim; local work rules and
 * professional advice come first.
 *
 * @param voice limit of reading time since the last real break
 * @param screen limit of time since the last real break
 * @param reading limit of reading time on a day
 * @param onCamera limit of time on camera on a day
 * @param realBreak the shortest rest that counts as a break
 * @param recovery a rest after which all clocks start again from zero
 */
public record FatigueLimits(
        Limit voice, Limit screen, Limit reading, Limit onCamera, Duration realBreak, Duration recovery) {
    /**
     * A limit with its warning steps.
     *
     * @param coming time of the early warning
     * @param due the limit itself
     * @param overdue time at which it is well exceeded
     */
    public record Limit(Duration coming, Duration due, Duration overdue) {
        /** Checks the order. */
        public Limit {
            if (coming.isNegative() || due.compareTo(coming) < 0 || overdue.compareTo(due) < 0) {
                throw new IllegalArgumentException(
                        "coming (" + coming + "), due (" + due + ") and overdue (" + overdue + ") must rise from zero");
            }
        }

        /** A limit from its three times in minutes. */
        public static Limit ofMinutes(long coming, long due, long overdue) {
            return new Limit(Duration.ofMinutes(coming), Duration.ofMinutes(due), Duration.ofMinutes(overdue));
        }

        /** The urgency after {@code elapsed}. */
        public BreakAdvice.Urgency urgency(Duration elapsed) {
            if (elapsed.compareTo(overdue) >= 0) {
                return BreakAdvice.Urgency.OVERDUE;
            }
            if (elapsed.compareTo(due) >= 0) {
                return BreakAdvice.Urgency.DUE;
            }
            return elapsed.compareTo(coming) >= 0 ? BreakAdvice.Urgency.COMING : BreakAdvice.Urgency.NONE;
        }
    }

    /** Checks the lengths of rest. */
    public FatigueLimits {
        if (realBreak.isNegative() || realBreak.isZero() || recovery.compareTo(realBreak) < 0) {
            throw new IllegalArgumentException("realBreak (" + realBreak + ") must be above zero and recovery ("
                    + recovery + ") not shorter than that");
        }
    }

    /**
     * The defaults.
     *
     * <ul>
     *   <li>Voice: about 35 minutes of continuous reading (Titze, Svec and Popolo 2003, who call their limit rather
     *       low and in need of refinement).
     *   <li>Screen: 5 to 10 minutes away from it after 50 to 60 minutes (HSE).
     *   <li>Reading from a script tires after 2 to 3 hours, being on camera after 3 to 4 (common practice).
     *   <li>A real break is 5 minutes: within that time of rest the pitch of tired readers was back to normal after an
     *       hour's loud reading, though they felt the effort for longer.
     *   <li>Recovery: after 2 hours of reading 90 % came back in 4 to 6 hours (Hunter and Titze 2009).
     * </ul>
     */
    public static FatigueLimits defaults() {
        return new FatigueLimits(
                Limit.ofMinutes(25, 35, 45),
                Limit.ofMinutes(50, 60, 75),
                Limit.ofMinutes(105, 120, 180),
                Limit.ofMinutes(165, 180, 240),
                Duration.ofMinutes(5),
                Duration.ofHours(4));
    }
}
