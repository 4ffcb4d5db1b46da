package org.bookholder.follow;

import java.util.List;
import org.bookholder.script.Contractions;
import org.bookholder.script.PreparedScript.PreparedWord;

/** Where a line's words were said in full for contracted or the other way about, as the open ear heard them. */
final class Rewording {
    private final List<PreparedWord> words;
    private final OpenAlignment alignment;

    Rewording(List<PreparedWord> words, OpenAlignment alignment) {
        this.words = words;
        this.alignment = alignment;
    }

    /** Whether another wording that says the same was heard at a word, or for it and one beside it. */
    boolean at(int word) {
        return begins(word) || endsPair(word);
    }

    /** The same, and the word is the only or the first one that it was heard for. */
    boolean begins(int word) {
        String heard = alignment.said(word);
        return inFull(words.get(word), heard.replace(" ", "")) || contracted(words, word, heard);
    }

    private boolean endsPair(int word) {
        return word > 0 && contracted(words, word - 1, alignment.said(word));
    }

    /** Whether {@code heard}, without spaces, is a word in full, or contracted if it is written in full as one word. */
    static boolean inFull(PreparedWord word, String heard) {
        return said(word).stream()
                .flatMap(form -> Contractions.others(form).stream())
                .anyMatch(other -> String.join("", other).equals(heard));
    }

    /** Whether {@code heard} is a contraction of a word and the one after it. */
    static boolean contracted(List<PreparedWord> words, int word, String heard) {
        return word + 1 < words.size()
                && said(words.get(word)).stream()
                        .anyMatch(first -> said(words.get(word + 1)).stream()
                                .anyMatch(second ->
                                        Contractions.contracted(first, second).contains(heard)));
    }

    private static List<String> said(PreparedWord word) {
        return word.word().spoken().stream().map(form -> String.join(" ", form)).toList();
    }
}
