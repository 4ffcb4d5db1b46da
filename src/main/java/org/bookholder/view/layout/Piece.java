package org.bookholder.view.layout;

import org.bookholder.follow.model.ReadingPosition;

/**
 * One word of a row, or a part of a word that is too long for a row.
 *
 * @param text as shown
 * @param line number of the script line, from 1; 0 in a direction
 * @param word number of the word in the line, from 1; 0 in a direction
 * @param ordinal index of the word in the script, from 0; -1 in a direction
 * @param width in ems, without the space after it
 * @param spoken number of spoken words it stands for; 0 in a direction and in the second and later parts of a word
 * @param bond penalty for ending a row after it; 0 for neutral, negative for a good place
 * @param pause whether it is not a word but the mark of a pause after one
 * @param rule underlines for the author's emphasis: 0 none, 1 light, 2 strong
 */
public record Piece(
        String text, int line, int word, int ordinal, double width, int spoken, double bond, boolean pause, int rule) {
    /** Whether it comes before the word at a position. */
    boolean isBefore(ReadingPosition position) {
        return line < position.line() || (line == position.line() && word < position.word());
    }

    /** Whether a sentence ends with it. */
    boolean endsSentence() {
        return bond == RowBreakRules.STOP;
    }
}
