package org.bookholder.follow.judge;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.bookholder.timing.StreamTime;

/**
 * How well the recogniser understands this reader, learnt within a session from each reading of a line.
 *
 * <p>If a reading is judged again, the new result replaces the old one.
 */
public final class ReaderProfile {
    /**
     * If a recogniser hears a word as the same other word this many times, in this many lines, and never correctly, the
     * mistake is the recogniser's.
     */
    private static final int TIMES = 3;

    private static final int LINES = 2;

    /** How many readings the usual rate weighs as much as; it dominates until there are that many. */
    private static final double USUAL_READINGS = 10;

    /**
     * Words per reading that the script ear missed although they were read: mean over the readers who were measured.
     */
    private static final double USUAL_SLIPS = 0.21;

    /**
     * Where the open ear hears a smaller share of the words as written, it understands the reader badly. Readers who were measured: see
     * decision 0326.
     */
    public static final double BADLY = 0.6;

    /** About a minute of reading. */
    private static final int WORDS_TO_TELL = 100;

    private final Map<Reading, Told> told = new HashMap<>();
    private int slips;

    private record Reading(int take, StreamTime start) {}

    /**
     * What one reading taught about the reader.
     *
     * @param line the line, from 0
     * @param slips how many of its words the script ear missed although they were not reported
     * @param words how many words it has; 0 if the open ear heard nothing at all of it
     * @param understood how many of them the open ear heard as written
     * @param wrong the words that were not heard as written by either ear, in lower case, and what the open ear heard
     * @param right the words that the open ear heard as written, in lower case
     */
    record Told(int line, int slips, int words, int understood, Map<String, String> wrong, Set<String> right) {
        Told {
            wrong = Map.copyOf(wrong);
            right = Set.copyOf(right);
        }
    }

    void add(int take, StreamTime start, Told more) {
        Told before = told.put(new Reading(take, start), more);
        slips += more.slips() - (before == null ? 0 : before.slips());
    }

    /** Forgets what was learnt from a take. */
    public void forget(int take) {
        told.keySet().removeIf(reading -> reading.take() == take);
        slips = told.values().stream().mapToInt(Told::slips).sum();
    }

    /** The share of the words read, 0 to 1, that the open ear heard as written; empty while too few were read to tell. */
    public OptionalDouble understood() {
        int words = told.values().stream().mapToInt(Told::words).sum();
        int understood = told.values().stream().mapToInt(Told::understood).sum();
        return words < WORDS_TO_TELL ? OptionalDouble.empty() : OptionalDouble.of((double) understood / words);
    }

    /** Whether so little is understood that single misread words can't be told. */
    boolean badlyUnderstood() {
        return understood().orElse(1) < BADLY;
    }

    /** How many words per reading the script ear misses although they are read. */
    double slipsPerReading() {
        return (slips + USUAL_READINGS * USUAL_SLIPS) / (told.size() + USUAL_READINGS);
    }

    /**
     * Whether it is not the reader who gets a word wrong, because it is always heard as the same other word.
     *
     * @param word in lower case
     * @param heard what the open ear heard for it; empty if nothing, which proves nothing
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
