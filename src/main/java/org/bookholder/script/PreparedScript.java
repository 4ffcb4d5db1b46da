package org.bookholder.script;

import java.util.List;

/**
 * A script as a recogniser with a certain vocabulary can hear it.
 *
 * @param script the script
 * @param lines for each line the forms of its words, in the order of {@link Script#lines()}
 * @param unknown the words that the recogniser does not know, each once, in script order
 */
public record PreparedScript(Script script, List<List<PreparedWord>> lines, List<UnknownWord> unknown) {
    /** Copies the lists. */
    public PreparedScript {
        lines = lines.stream().map(List::copyOf).toList();
        unknown = List.copyOf(unknown);
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
