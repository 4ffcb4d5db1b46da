package org.bookholder.fatigue;

import java.util.List;

/**
 * What a presenter read on a day before a session goes on, so that breaks and stumbling are counted over the whole day.
 *
 * @param clocks the clocks of the day so far
 * @param minutes minutes of audio that were taken on the day so far
 * @param first what was read in the first twenty of them
 * @param recent what was read in each of the last ten of them, in order; minutes before the first one are empty
 */
public record EarlierReading(FatigueClocks clocks, int minutes, StumbleTally first, List<StumbleTally> recent) {
    /** Nothing. */
    public static final EarlierReading NONE = new EarlierReading(FatigueClocks.START, 0, StumbleTally.NONE, List.of());

    /** Copies the list. */
    public EarlierReading {
        recent = List.copyOf(recent);
    }
}
