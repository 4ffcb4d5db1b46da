package org.bookholder.pace;

import java.util.Arrays;
import java.util.List;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;

/**
 * Counts a script's spoken words once, so that later look-ups take the same time in a script of any length.
 *
 * <p>Words are counted as spoken, by the preferred spoken form: "1999" counts as the three words "nineteen ninety
 * nine".
 */
public final class WordCounts {
    private final List<ScriptLine> lines;
    /** For each line, the index in {@link #before} of its first word; the last entry is the end. */
    private final int[] first;
    /** For each word of the script, the number of spoken words before it; the last entry is the total. */
    private final int[] before;

    private WordCounts(List<ScriptLine> lines, int[] first, int[] before) {
        this.lines = lines;
        this.first = first;
        this.before = before;
    }

    /** Counts a script's words. */
    public static WordCounts of(Script script) {
        List<ScriptLine> lines = script.lines();
        int[] first = new int[lines.size() + 1];
        int[] before = new int[lines.stream().mapToInt(l -> l.words().size()).sum() + 1];
        int index = 0;
        for (ScriptLine line : lines) {
            for (ScriptWord word : line.words()) {
                before[index + 1] = before[index] + spoken(word);
                index++;
            }
            first[line.number()] = index;
        }
        return new WordCounts(lines, first, before);
    }

    /** Number of spoken words for one written word. */
    static int spoken(ScriptWord word) {
        return word.spoken().get(0).size();
    }

    /** Number of lines. */
    public int lines() {
        return lines.size();
    }

    /** Line {@code number}, from 1. */
    public ScriptLine line(int number) {
        return lines.get(number - 1);
    }

    /** Number of spoken words in the script. */
    public int total() {
        return before[before.length - 1];
    }

    /** Number of spoken words before a position; at the end, the total. */
    public int before(ReadingPosition position) {
        if (position.line() > lines.size()) {
            return total();
        }
        int word = first[position.line() - 1] + position.word() - 1;
        return before[Math.min(word, first[position.line()])];
    }

    @Override
    public boolean equals(Object other) {
        return this == other
                || (other instanceof WordCounts counts
                        && lines.equals(counts.lines)
                        && Arrays.equals(before, counts.before));
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(before);
    }

    @Override
    public String toString() {
        return lines.size() + " lines, " + total() + " spoken words";
    }
}
