package org.bookholder.follow.model;

/**
 * The word to be read next.
 *
 * @param line line number, from 1; one past the last line when the script has been read
 * @param word word of the line, from 1
 */
public record ReadingPosition(int line, int word) implements Comparable<ReadingPosition> {
    /** The first word of a script. */
    public static final ReadingPosition START = new ReadingPosition(1, 1);

    /** Checks the ranges. */
    public ReadingPosition {
        if (line < 1 || word < 1) {
            throw new IllegalArgumentException("line (" + line + ") and word (" + word + ") must be 1 or more");
        }
    }

    @Override
    public int compareTo(ReadingPosition other) {
        return line != other.line ? Integer.compare(line, other.line) : Integer.compare(word, other.word);
    }
}
