package org.bookholder.bench;

import java.util.EnumMap;
import java.util.Map;

/**
 * How often each thing happens in a composed reading.
 *
 * @param lines lines of the script
 * @param happenings how many lines each thing happens to
 * @param asides how often something is said that is not in the script
 * @param pauses how often the reader is silent for three to eight seconds
 */
record Recipe(int lines, Map<Happening, Integer> happenings, int asides, int pauses) {
    /** Copies the map. */
    Recipe {
        happenings = new EnumMap<>(happenings);
    }

    /** A bad day: about every second line has a deviation, many times as many as with a practised reader. */
    static Recipe eventful() {
        return new Recipe(
                40,
                Map.of(
                        Happening.SKIP, 3,
                        Happening.PARTIAL, 2,
                        Happening.SWAP, 3,
                        Happening.DROP, 2,
                        Happening.EXTRA, 2,
                        Happening.RESTART, 3,
                        Happening.AGAIN, 2,
                        Happening.BACK, 1),
                3,
                2);
    }

    /** A good day: no deviations, so that every report is a false one. */
    static Recipe faultless() {
        return new Recipe(40, Map.of(Happening.NOTHING, 0), 0, 1);
    }

    /** One of each, to be quick. */
    static Recipe quick() {
        return new Recipe(
                24,
                Map.of(
                        Happening.SKIP, 1,
                        Happening.PARTIAL, 1,
                        Happening.SWAP, 1,
                        Happening.DROP, 1,
                        Happening.RESTART, 1,
                        Happening.AGAIN, 1,
                        Happening.BACK, 1),
                1,
                1);
    }

    /** For a voice of which there are only five utterances. */
    static Recipe brief() {
        return new Recipe(5, Map.of(Happening.SWAP, 1, Happening.RESTART, 1), 0, 0);
    }
}
