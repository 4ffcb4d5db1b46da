package org.bookholder.handoff.captions;

import java.util.Locale;
import java.util.Set;

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

    private static final double AFTER_SENTENCE = 0;
    private static final double AFTER_CLAUSE = 1;
    private static final double BEFORE_LEADING = 3;
    private static final double ANYWHERE = 6;
    private static final double WITHIN_PHRASE = 14;

    private SenseBreaks() {}

    /** What it costs to break between two words; 0 at the end of a sentence, more the closer they belong together. */
    static double cost(String before, String after) {
        String bare = before.replaceAll("[\"'\u201d\u2019)\\]]+$", "");
        if (bare.matches(".*[.!?\u2026]")) {
            return AFTER_SENTENCE;
        }
        if (bare.matches(".*[,;:\u2013\u2014-]")) {
            return AFTER_CLAUSE;
        }
        if (LEADING.contains(plain(before))) {
            return WITHIN_PHRASE;
        }
        return LEADING.contains(plain(after)) ? BEFORE_LEADING : ANYWHERE;
    }

    private static String plain(String word) {
        return word.toLowerCase(Locale.ROOT).replace('\u2019', '\'').replaceAll("[^\\p{L}\\p{N}']", "");
    }
}
