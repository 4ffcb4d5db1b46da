package org.bookholder.handoff.captions;

import java.util.List;
import java.util.stream.Collectors;
import org.bookholder.timing.StreamTime;

/**
 * What was said in one go: a line of the script, or something else.
 *
 * @param line line number, from 1; 0 if it is not in the script
 * @param words its words as they were said, in order of time, at least one
 */
public record SpokenLine(int line, List<TimedWord> words) {
    /** Copies the list and checks that there is a word. */
    public SpokenLine {
        words = List.copyOf(words);
        if (words.isEmpty()) {
            throw new IllegalArgumentException("line " + line + " must have a word");
        }
    }

    /** When its first word begins. */
    public StreamTime start() {
        return words.get(0).start();
    }

    /** Its words with spaces between them. */
    public String text() {
        return words.stream().map(TimedWord::text).collect(Collectors.joining(" "));
    }
}
