package org.bookholder.speech;

import java.util.List;

/**
 * The phrases that the script ear expects.
 *
 * <p>An empty or malformed grammar, or changing the grammar during an utterance, makes native code kill the JVM. So a
 * grammar is checked here and is never empty, and an ear keeps the grammar it was created with.
 *
 * @param phrases word sequences in lower case, each word in the recogniser's vocabulary, at least one
 */
public record Grammar(List<List<String>> phrases) {
    /** Copies the lists and checks that there is at least one word. */
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
