package org.bookholder.pace;

import java.util.BitSet;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.WordTime;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.timing.StreamTime;

/**
 * How fast one attempt at a line was read.
 *
 * @param spoken the spoken words, and the time from the attempt's start to its end; gives the speaking rate
 * @param articulated the words whose times are known, and their time without pauses; gives the articulation rate
 */
public record PaceOfLine(WordTally spoken, WordTally articulated) {
    /**
     * Measures an attempt. The words that count as read are those of the line up to its end (up to the last one heard
     * if the attempt is incomplete), without dropped ones; a word swapped for another counts as read.
     *
     * @param line the script's line
     * @param attempt an attempt at it
     * @param pause the shortest silence between two words that is left out of the articulation rate
     */
    public static PaceOfLine of(ScriptLine line, Attempt attempt, StreamTime pause) {
        BitSet heard = new BitSet();
        attempt.words().forEach(w -> heard.set(w.word()));
        return new PaceOfLine(
                WordTally.of(
                        spoken(line, read(line, attempt, heard)), attempt.end().since(attempt.start())),
                new WordTally(spoken(line, heard), articulatedTicks(attempt, pause)));
    }

    /** Words per minute, pauses included; NaN if the attempt has no length. */
    public double wordsPerMinute() {
        return spoken.perMinute();
    }

    /** Words per minute, pauses left out; NaN if no word's time is known. */
    public double articulationRate() {
        return articulated.perMinute();
    }

    private static BitSet read(ScriptLine line, Attempt attempt, BitSet heard) {
        BitSet read = new BitSet();
        int last = attempt.complete() ? line.words().size() : heard.length() - 1;
        if (last >= 1) {
            read.set(1, last + 1);
        }
        for (Deviation deviation : attempt.deviations()) {
            switch (deviation.kind()) {
                case DROPPED -> read.clear(deviation.word());
                case SWAPPED -> read.set(deviation.word());
                case ADDED -> {} // not a word of the script
            }
        }
        return read;
    }

    private static long spoken(ScriptLine line, BitSet words) {
        return words.stream()
                .filter(w -> w >= 1 && w <= line.words().size())
                .mapToLong(w -> WordCounts.spoken(line.words().get(w - 1)))
                .sum();
    }

    private static long articulatedTicks(Attempt attempt, StreamTime pause) {
        long ticks = 0;
        StreamTime end = null;
        for (WordTime word : attempt.words()) {
            ticks += word.end().since(word.start()).ticks();
            if (end != null) {
                StreamTime gap = word.start().since(end);
                ticks += gap.isBefore(pause) ? gap.ticks() : 0;
            }
            end = word.end();
        }
        return ticks;
    }
}
