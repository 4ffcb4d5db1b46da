package org.bookholder.script.normalize;

import java.util.Set;

/** Knows how the words of one language are said. Not thread-safe. */
public interface TextNormalizer {
    /** English where 3/9 is the ninth of March, by Unicode CLDR's short date patterns. */
    Set<String> MONTH_FIRST = Set.of("en", "en-US", "en-PH", "en-PR", "en-GU");

    /**
     * Reads the written word, or the group of words said as one, that begins at {@code from}.
     *
     * @param text a source line in plain typography, words separated by single spaces
     * @param from first character of a written word, past opening punctuation
     * @param chunkEnd index after the written word's last character
     * @param to index after the last character that belongs to the sentence
     * @return how it is said; its forms are empty if nothing is to be said
     */
    SpokenSpan at(String text, int from, int chunkEnd, int to);

    /** The normalizer for the language with the BCP 47 tag {@code language}. */
    static TextNormalizer of(String language) {
        return language.equals("en") || language.startsWith("en-")
                ? new EnglishNormalizer(!MONTH_FIRST.contains(language))
                : new PlainNormalizer(language);
    }
}
