package org.bookholder.fatigue;

import java.time.Duration;

/**
 * Advice on a break, based on one clock or on stumbling.
 *
 * @param reason what is measured
 * @param urgency how near the limit is
 * @param left time to the limit; negative past it; zero for evidence
 * @param figures the figures behind it
 */
public record BreakAdvice(Reason reason, Urgency urgency, Duration left, AdviceFigures figures) {
    /** What is measured. */
    public enum Reason {
        /** Continuous reading since the last real break: voice rest. */
        VOICE,
        /** Time since the last real break, at the screen. */
        SCREEN,
        /** Reading time on the day. */
        READING,
        /** On-camera time on the day. */
        ON_CAMERA,
        /** More stumbling, or a drifting pace, than in the day's own first twenty minutes. */
        STUMBLING
    }

    /** How urgent a break is. */
    public enum Urgency {
        /** Nothing to say. */
        NONE,
        /** A break is coming. */
        COMING,
        /** A break is due. */
        DUE,
        /** A break is overdue. */
        OVERDUE
    }
}
