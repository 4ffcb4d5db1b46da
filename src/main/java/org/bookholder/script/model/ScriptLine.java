package org.bookholder.script.model;

import java.util.List;
import java.util.stream.Collectors;

/**
 * The unit that is read, logged and picked up: a sentence, or whatever the author put on one source line.
 *
 * @param number line number in the script, from 1 (only lines count, directions do not)
 * @param words the words in reading order, at least one
 * @param paragraph paragraph number, from 0
 * @param sourceLine line of the source file, from 1
 * @param speaker whose name stands before it, as written there; empty if nobody's does
 */
public record ScriptLine(int number, List<ScriptWord> words, int paragraph, int sourceLine, String speaker)
        implements ScriptElement {
    /** A line before which no speaker's name stands. */
    public ScriptLine(int number, List<ScriptWord> words, int paragraph, int sourceLine) {
        this(number, words, paragraph, sourceLine, "");
    }

    /** Copies the list and checks that there is at least one word. */
    public ScriptLine {
        words = List.copyOf(words);
        if (words.isEmpty()) {
            throw new IllegalArgumentException("line " + number + " must have a word");
        }
    }

    /** The line as it is shown. */
    @Override
    public String text() {
        return words.stream().map(ScriptWord::written).collect(Collectors.joining(" "));
    }

    /** Number of words as spoken, by the preferred spoken form of each word. */
    public int spokenWords() {
        int spoken = 0;
        for (ScriptWord word : words) {
            spoken += word.spoken().get(0).size();
        }
        return spoken;
    }
}
