package org.bookholder.pace;

import java.util.Arrays;
import java.util.List;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;

/**
 * A script's spoken words counted once, so that asking for a count takes the same time in a script of any length.
 *
 * <p>What is counted are words as spoken, by the preferred spoken form: "1999" counts as the three words "nineteen
 * ninety nine".
 */
public final class WordCounts {
    private final List<ScriptLine> lines;
    /** For each line, the index in {@link #before} of its first word; then the index of the end. */
    private final int[] first;
    /** For each word of the script, the spoken words before it; then all of them. */
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

    /** The words that one written word is spoken as. */
    static int spoken(ScriptWord word) {
        return word.spoken().get(0).size();
    }

    /** How many lines there are. */
    public int lines() {
        return lines.size();
    }

    /** Line {@code number}, from 1. */
    public ScriptLine line(int number) {
        return lines.get(number - 1);
    }

    /** The spoken words of the whole script. */
    public int total() {
        return before[before.length - 1];
    }

    /** The spoken words before a position; all of them at the end. */
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
