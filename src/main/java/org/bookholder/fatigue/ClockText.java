package org.bookholder.fatigue;

import java.time.Duration;
import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.fatigue.FatigueLimits.Limit;

/** The sentences of the clocks: calm, with the figures. */
final class ClockText {
    private ClockText() {}

    static String voice(FatigueClocks clocks, FatigueLimits limits) {
        return "Reading for " + length(clocks.readingSinceBreak()) + since(clocks)
                + advised("voice rest", limits.voice(), clocks.readingSinceBreak());
    }

    static String screen(FatigueClocks clocks, FatigueLimits limits) {
        return "At it for " + length(clocks.sinceBreak()) + since(clocks)
                + advised("5 to 10 min away from the screen", limits.screen(), clocks.sinceBreak());
    }

    static String reading(FatigueClocks clocks, FatigueLimits limits) {
        return length(clocks.reading()) + " of reading in this session; reading from a script tires after "
                + range(limits.reading()) + ".";
    }

    static String onCamera(FatigueClocks clocks, FatigueLimits limits) {
        return length(clocks.onCamera()) + " on camera in this session; being on camera tires after "
                + range(limits.onCamera()) + ".";
    }

    /** Whole minutes, from an hour on with the hours apart: "34 min", "2 h", "1 h 50 min". */
    static String length(Duration length) {
        long hours = length.toHours();
        int minutes = length.toMinutesPart();
        if (hours == 0) {
            return minutes + " min";
        }
        return minutes == 0 ? hours + " h" : hours + " h " + minutes + " min";
    }

    private static String since(FatigueClocks clocks) {
        return clocks.rested() ? " since the last break; " : " without a break; ";
    }

    private static String advised(String what, Limit limit, Duration elapsed) {
        boolean past = limit.urgency(elapsed).compareTo(Urgency.DUE) >= 0 && elapsed.compareTo(limit.due()) > 0;
        return what + (past ? " was advised at " : " is advised at ") + length(limit.due()) + ".";
    }

    private static String range(Limit limit) {
        return limit.due().equals(limit.overdue())
                ? length(limit.due())
                : length(limit.due()) + " to " + length(limit.overdue());
    }
}
