package org.bookholder.follow.model;

import java.util.List;
import org.bookholder.timing.StreamTime;

/**
 * One reading of one line within a take.
 *
 * @param take take number, from 1
 * @param ordinal the attempt's number within its take, from 1, in order of time
 * @param line line number, from 1
 * @param start when its first word begins
 * @param end when its last word ends
 * @param complete whether it reached the line's end
 * @param words times of its words, in order, without words that were not heard
 * @param deviations words not read as written, in order
 */
public record Attempt(
        int take,
        int ordinal,
        int line,
        StreamTime start,
        StreamTime end,
        boolean complete,
        List<WordTime> words,
        List<Deviation> deviations) {
    /** Copies the lists. */
    public Attempt {
        words = List.copyOf(words);
        deviations = List.copyOf(deviations);
    }

    /** The same attempt at the same line under another number. */
    public Attempt withLine(int number) {
        return new Attempt(take, ordinal, number, start, end, complete, words, deviations);
    }

    /** The same attempt under another number within its take. */
    public Attempt withOrdinal(int number) {
        return new Attempt(take, number, line, start, end, complete, words, deviations);
    }

    /**
     * When a word was said, or else the next one that was heard; the attempt's end if none was.
     *
     * @param word its number in the line, from 1
     */
    public StreamTime startOf(int word) {
        return words.stream()
                .filter(time -> time.word() >= word)
                .map(WordTime::start)
                .findFirst()
                .orElse(end);
    }

    /** The line's outcome in this attempt: clean, misread or incomplete. */
    public Outcome outcome() {
        if (!complete) {
            return Outcome.INCOMPLETE;
        }
        return deviations.isEmpty() ? Outcome.CLEAN : Outcome.MISREAD;
    }
}
