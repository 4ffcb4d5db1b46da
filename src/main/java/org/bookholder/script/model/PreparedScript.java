package org.bookholder.script.model;

import java.util.List;

/**
 * A script together with the words by which a recogniser with a given vocabulary can hear it.
 *
 * @param script the script
 * @param lines for each line the forms of its words, in the order of {@link Script#lines()}
 * @param unknown the words that the recogniser does not know, each once, in script order
 * @param rivals misreadings that sound much like the written text, with the words around them: the recogniser must know
 *     them to tell the two apart
 */
public record PreparedScript(
        Script script, List<List<PreparedWord>> lines, List<UnknownWord> unknown, List<List<String>> rivals) {
    /** A script without rivals. */
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
     * @param standIn whether the forms only sound like the word, so that hearing something different does not prove a
     *     misreading
     */
    public record PreparedWord(ScriptWord word, List<List<String>> forms, boolean standIn) {
        /** Copies the lists. */
        public PreparedWord {
            forms = forms.stream().map(List::copyOf).toList();
        }

        /** What the recogniser is most likely to write for it; empty if it cannot write anything like it. */
        public List<String> preferred() {
            return forms.isEmpty() ? List.of() : forms.get(0);
        }
    }

    /**
     * A word that the recogniser does not know.
     *
     * @param spoken the word as spoken, lower case
     * @param line number of the first line that contains it, from 1
     * @param standIn the known words listened for instead; empty if none were found
     */
    public record UnknownWord(String spoken, int line, List<String> standIn) {
        /** Copies the list. */
        public UnknownWord {
            standIn = List.copyOf(standIn);
        }
    }
}
