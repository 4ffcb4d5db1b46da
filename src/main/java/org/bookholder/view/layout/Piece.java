package org.bookholder.view.layout;

import org.bookholder.follow.model.ReadingPosition;

/**
 * One word of a row, or a part of a word that is too long for a row.
 *
 * @param text as shown
 * @param line line number, from 1; 0 in a direction
 * @param word word of the line, from 1; 0 in a direction
 * @param ordinal the word's number in the script, from 0; -1 in a direction
 * @param width in ems, without the space after it
 * @param spoken spoken words that it stands for; 0 in a direction and in the second and later parts of a word
 * @param bond how ill a row would end after it, 0 for no objection; negative for a good place
 * @param pause whether it is no word but the mark of a pause after one
 * @param rule whether the author stressed it: 0 no, 1 lightly, 2 strongly
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
