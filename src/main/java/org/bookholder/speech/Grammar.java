package org.bookholder.speech;

import java.util.List;

/**
 * The phrases that the script ear expects.
 *
 * <p>An empty or malformed grammar, or a change of it in mid-utterance, ends the JVM in native code; so a grammar is
 * checked here, is never empty, and an ear keeps the one it was made with.
 *
 * @param phrases word sequences in lower case, each word in the recogniser's vocabulary, at least one
 */
public record Grammar(List<List<String>> phrases) {
    /** Copies the lists and checks that there is a word. */
    public Grammar {
        phrases = phrases.stream().map(List::copyOf).toList();
        if (phrases.isEmpty() || phrases.stream().anyMatch(List::isEmpty)) {
            throw new IllegalArgumentException("phrases must hold at least one phrase, and each phrase a word");
        }
        for (List<String> phrase : phrases) {
            for (String word : phrase) {
                if (!word.matches("[\\p{Ll}\\p{Lo}\\p{M}'.-]+")) {
                    throw new IllegalArgumentException("word ('" + word + "') must be lower-case letters");
                }
            }
        }
    }
}
