package org.bookholder.handoff.captions;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * How well text can be broken between two words. From the BBC Subtitle Guidelines: break at punctuation; not between
 * article and noun, preposition and phrase, conjunction and clause, pronoun and verb, or the parts of a verb.
 */
final class SenseBreaks {
    /** Words that belong to what comes after them. */
    private static final Set<String> LEADING = Set.of(
            "a", "an", "the", "this", "that", "these", "those", "my", "your", "his", "her", "its", "our", "their", "no",
            "every", "each", "some", "any", "of", "to", "in", "on", "at", "by", "for", "with", "from", "into", "onto",
            "over", "under", "about", "after", "before", "between", "through", "without", "against", "and", "or", "but",
            "nor", "so", "if", "when", "while", "because", "that's", "which", "who", "as", "than", "i", "you", "he",
            "she", "it", "we", "they", "is", "are", "was", "were", "be", "been", "has", "have", "had", "do", "does",
            "did", "will", "would", "can", "could", "should", "may", "might", "must", "not", "don't", "very", "too");

    private static final Pattern CLOSING = Pattern.compile("[\"'\u201d\u2019)\\]]+$");
    private static final Pattern SENTENCE_END = Pattern.compile(".*[.!?\u2026]");
    private static final Pattern CLAUSE_END = Pattern.compile(".*[,;:\u2013\u2014-]");
    private static final Pattern NO_LETTER = Pattern.compile("[^\\p{L}\\p{N}']");

    private static final double AFTER_SENTENCE = 0;
    private static final double AFTER_CLAUSE = 1;
    private static final double BEFORE_LEADING = 3;
    private static final double ANYWHERE = 6;
    private static final double WITHIN_PHRASE = 14;

    private SenseBreaks() {}

    /** What it costs to break between two words; 0 at the end of a sentence, more the closer they belong together. */
    static double cost(String before, String after) {
        String bare = CLOSING.matcher(before).replaceAll("");
        if (SENTENCE_END.matcher(bare).matches()) {
            return AFTER_SENTENCE;
        }
        if (CLAUSE_END.matcher(bare).matches()) {
            return AFTER_CLAUSE;
        }
        if (LEADING.contains(plain(before))) {
            return WITHIN_PHRASE;
        }
        return LEADING.contains(plain(after)) ? BEFORE_LEADING : ANYWHERE;
    }

    private static String plain(String word) {
        return NO_LETTER
                .matcher(word.toLowerCase(Locale.ROOT).replace('\u2019', '\''))
                .replaceAll("");
    }
}
