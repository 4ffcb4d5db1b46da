package org.bookholder.follow.judge;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.bookholder.timing.StreamTime;

/**
 * How the recogniser gets on with this reader, learnt within a session: what each reading of a line told of it.
 *
 * <p>A reading that is judged again replaces what it told before.
 */
public final class ReaderProfile {
    /**
     * A recogniser that hears a word as the same other one so often, in so many lines, and never right, is to blame.
     */
    private static final int TIMES = 3;

    private static final int LINES = 2;

    /** Readings that the usual rate counts for, before there are as many. */
    private static final double USUAL_READINGS = 10;

    /** Words a reading that the script ear lost although they were read, mean of the readers the figures are from. */
    private static final double USUAL_SLIPS = 0.21;

    private final Map<Reading, Told> told = new HashMap<>();
    private int slips;

    private record Reading(int take, StreamTime start) {}

    /**
     * What a reading told.
     *
     * @param line the line, from 0
     * @param slips how many of its words the script ear lost although they were not called
     * @param wrong the words that were not heard as written by either ear, in lower case, and what the open ear heard
     * @param right the words that the open ear heard as written, in lower case
     */
    record Told(int line, int slips, Map<String, String> wrong, Set<String> right) {
        Told {
            wrong = Map.copyOf(wrong);
            right = Set.copyOf(right);
        }
    }

    void add(int take, StreamTime start, Told more) {
        Told before = told.put(new Reading(take, start), more);
        slips += more.slips() - (before == null ? 0 : before.slips());
    }

    /** Forgets what a take told. */
    public void forget(int take) {
        told.keySet().removeIf(reading -> reading.take() == take);
        slips = told.values().stream().mapToInt(Told::slips).sum();
    }

    /** How many words a reading the script ear loses although they are read. */
    double slipsPerReading() {
        return (slips + USUAL_READINGS * USUAL_SLIPS) / (told.size() + USUAL_READINGS);
    }

    /**
     * Whether it is not the reader who gets a word wrong: it is always heard as the same other one.
     *
     * @param word in lower case
     * @param heard what the open ear heard for it; empty if nothing, which tells nothing of the word
     */
    boolean alwaysMisheard(String word, String heard) {
        int times = 0;
        Set<Integer> lines = new HashSet<>();
        for (Told reading : told.values()) {
            if (reading.right().contains(word)) {
                return false;
            }
            if (heard.equals(reading.wrong().get(word))) {
                times++;
                lines.add(reading.line());
            }
        }
        return !heard.isEmpty() && times >= TIMES && lines.size() >= LINES;
    }
}
