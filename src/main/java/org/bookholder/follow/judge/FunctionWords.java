package org.bookholder.follow.judge;

import java.util.Locale;
import java.util.Set;
import org.bookholder.script.model.PreparedScript.PreparedWord;

/** Function words that recognisers miss or confuse so often that a missing one proves nothing. */
final class FunctionWords {
    private static final Set<String> SLIGHT = Set.of(
            "a", "an", "the", "and", "or", "but", "nor", "so", "as", "if", "of", "to", "in", "on", "at", "by", "for",
            "up", "is", "am", "are", "was", "be", "it", "its", "it's", "he", "she", "we", "you", "i", "me", "my", "his",
            "her", "him", "our", "us", "do", "did", "has", "had", "can", "may", "not", "no", "all", "too", "off", "out",
            "who", "how", "any", "let", "get", "got", "i'm", "i'd");

    private FunctionWords() {}

    static boolean contains(PreparedWord word) {
        return SLIGHT.contains(word.word().plain().toLowerCase(Locale.ROOT).replace('’', '\''));
    }
}
