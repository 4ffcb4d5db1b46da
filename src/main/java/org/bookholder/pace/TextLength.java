package org.bookholder.pace;

/**
 * How much of a text there is to read.
 *
 * @param words spoken words, 0 or more
 * @param weight how long they take beside other words of the text, in letters: their own, and what words and pauses add
 */
public record TextLength(long words, double weight) {
    /** Nothing. */
    public static final TextLength NONE = new TextLength(0, 0);

    /** Words of which one takes as long as another. */
    public static TextLength of(long words) {
        return new TextLength(words, words);
    }

    /** This without {@code other}, its beginning. */
    TextLength minus(TextLength other) {
        return new TextLength(words - other.words, weight - other.weight);
    }

    /** The weight of a word; {@code usual} if there are no words. */
    double density(double usual) {
        return words == 0 ? usual : weight / words;
    }
}
