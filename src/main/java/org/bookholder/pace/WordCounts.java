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
    /** The same by weight. */
    private final double[] weights;

    private WordCounts(List<ScriptLine> lines, int[] first, int[] before, double[] weights) {
        this.lines = lines;
        this.first = first;
        this.before = before;
        this.weights = weights;
    }

    /** Counts a script's words. */
    public static WordCounts of(Script script) {
        List<ScriptLine> lines = script.lines();
        int[] first = new int[lines.size() + 1];
        int[] before = new int[lines.stream().mapToInt(l -> l.words().size()).sum() + 1];
        double[] weights = new double[before.length];
        int index = 0;
        for (int i = 0; i < lines.size(); i++) {
            List<ScriptWord> words = lines.get(i).words();
            for (int w = 0; w < words.size(); w++) {
                before[index + 1] = before[index] + spoken(words.get(w));
                weights[index + 1] =
                        weights[index] + ReadingWeights.spoken(words.get(w)) + ReadingWeights.pause(lines, i, w);
                index++;
            }
            first[i + 1] = index;
        }
        return new WordCounts(lines, first, before, weights);
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

    /** How much text there is in the script. */
    public TextLength length() {
        return length(before.length - 1);
    }

    /** How much text there is before a position. */
    public TextLength length(ReadingPosition position) {
        return length(index(position));
    }

    private TextLength length(int index) {
        return new TextLength(before[index], weights[index]);
    }

    /** Number of spoken words before a position; at the end, the total. */
    public int before(ReadingPosition position) {
        return before[index(position)];
    }

    /** How many words of the script come before a position. */
    private int index(ReadingPosition position) {
        if (position.line() > lines.size()) {
            return before.length - 1;
        }
        return Math.min(first[position.line() - 1] + position.word() - 1, first[position.line()]);
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
