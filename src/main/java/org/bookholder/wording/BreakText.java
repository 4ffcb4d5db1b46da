package org.bookholder.wording;

import java.time.Duration;
import java.util.Locale;
import org.bookholder.fatigue.AdviceFigures;
import org.bookholder.fatigue.AdviceFigures.Clock;
import org.bookholder.fatigue.AdviceFigures.Fluffs;
import org.bookholder.fatigue.AdviceFigures.Pace;
import org.bookholder.fatigue.AdviceFigures.TooLittle;
import org.bookholder.fatigue.BreakAdvice;
import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.fatigue.FatigueLimits.Limit;

/** Puts advice on breaks into words: one calm sentence with the figures. */
public final class BreakText {
    private BreakText() {}

    /** The sentence for an advice. */
    public static String of(BreakAdvice advice) {
        return advice.figures().to(new Sentence(advice));
    }

    private record Sentence(BreakAdvice advice) implements AdviceFigures.Handler<String> {
        @Override
        public String clock(Clock figures) {
            String elapsed = length(figures.elapsed());
            return switch (advice.reason()) {
                case VOICE -> "Reading for " + elapsed + since(figures) + advised("voice rest", figures);
                case SCREEN ->
                    "At the screen for " + elapsed + since(figures) + advised("5 to 10 min away from it", figures);
                case READING ->
                    elapsed + " of reading today; reading from a script tires after " + range(figures.limit()) + ".";
                case ON_CAMERA ->
                    elapsed + " on camera today; being on camera tires after " + range(figures.limit()) + ".";
                case STUMBLING -> throw new IllegalArgumentException("stumbling (" + figures + ") has no clock");
            };
        }

        @Override
        public String tooLittle(TooLittle figures) {
            return "Too little has been read to tell of stumbling.";
        }

        @Override
        public String fluffs(Fluffs figures) {
            return String.format(
                    Locale.ROOT,
                    advice.urgency() == Urgency.NONE
                            ? "%.1f fluffs in 100 words over the last ten minutes, %.1f in the first twenty."
                            : "Stumbling more: %.1f fluffs in 100 words over the last ten minutes, %.1f in the first "
                                    + "twenty; a break may help.",
                    figures.recent(),
                    figures.baseline());
        }

        @Override
        public String pace(Pace figures) {
            return String.format(
                    Locale.ROOT,
                    "The pace has drifted from %.0f words a minute in the first twenty minutes to %.0f in the last "
                            + "ten; a break may help.",
                    figures.baseline(),
                    figures.recent());
        }
    }

    private static String since(Clock figures) {
        return figures.rested() ? " since the last break; " : " without a break; ";
    }

    private static String advised(String what, Clock figures) {
        boolean past = figures.elapsed().compareTo(figures.limit().due()) > 0;
        return what + (past ? " was advised at " : " is advised at ")
                + length(figures.limit().due()) + ".";
    }

    private static String range(Limit limit) {
        return limit.due().equals(limit.overdue())
                ? length(limit.due())
                : length(limit.due()) + " to " + length(limit.overdue());
    }

    /** Whole minutes, from an hour on with the hours separate: "34 min", "2 h", "1 h 50 min". */
    private static String length(Duration length) {
        long hours = length.toHours();
        int minutes = length.toMinutesPart();
        if (hours == 0) {
            return minutes + " min";
        }
        return minutes == 0 ? hours + " h" : hours + " h " + minutes + " min";
    }
}
