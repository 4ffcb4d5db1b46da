package org.bookholder.script.model;

import java.util.List;

/**
 * A script as a recogniser with a certain vocabulary can hear it.
 *
 * @param script the script
 * @param lines for each line the forms of its words, in the order of {@link Script#lines()}
 * @param unknown the words that the recogniser does not know, each once, in script order
 * @param rivals what would be a misreading and sounds much like what is written, with the words around it: the recogniser
 *     must know it to tell them apart
 */
public record PreparedScript(
        Script script, List<List<PreparedWord>> lines, List<UnknownWord> unknown, List<List<String>> rivals) {
    /** A script in which nothing sounds like a misreading of it. */
    public PreparedScript(Script script, List<List<PreparedWord>> lines, List<UnknownWord> unknown) {
        this(script, lines, unknown, List.of());
    }

    /** Copies the lists. */
    public PreparedScript {
        lines = lines.stream().map(List::copyOf).toList();
        unknown = List.copyOf(unknown);
        rivals = rivals.stream().map(List::copyOf).toList();
    }

    /**
     * One script word in the recogniser's words.
     *
     * @param word the script word
     * @param forms the word sequences that the recogniser may write for it, all in its vocabulary, the preferred one
     *     first; empty if it cannot write anything like it
     * @param standIn whether the forms only sound like the word, so that a difference is no evidence of a misreading
     */
    public record PreparedWord(ScriptWord word, List<List<String>> forms, boolean standIn) {
        /** Copies the lists. */
        public PreparedWord {
            forms = forms.stream().map(List::copyOf).toList();
        }

        /** What the recogniser is likeliest to write for it; empty if it cannot write anything like it. */
        public List<String> preferred() {
            return forms.isEmpty() ? List.of() : forms.get(0);
        }
    }

    /**
     * A word that the recogniser does not know.
     *
     * @param spoken the word as spoken, lower case
     * @param line number of the first line it stands in, from 1
     * @param standIn what it is listened for as, empty if nothing was found
     */
    public record UnknownWord(String spoken, int line, List<String> standIn) {
        /** Copies the list. */
        public UnknownWord {
            standIn = List.copyOf(standIn);
        }
    }
}
