package org.bookholder.handoff.captions;

import org.bookholder.wording.PhraseBreaks;

/** Costs of breaking a caption between two words. */
final class SenseBreaks {
    private static final double AFTER_SENTENCE = 0;
    private static final double AFTER_CLAUSE = 1;
    private static final double BEFORE_LEADING = 3;
    private static final double ANYWHERE = 6;
    private static final double WITHIN_PHRASE = 14;

    /** More than any other break and the most uneven rows together cost. */
    private static final double NEVER = 100;

    private SenseBreaks() {}

    /**
     * The cost of a break between two words: 0 at the end of a sentence, and higher the more closely they belong
     * together.
     */
    static double cost(String before, String after) {
        return switch (PhraseBreaks.between(before, after)) {
            case SENTENCE_END -> AFTER_SENTENCE;
            case CLAUSE_END -> AFTER_CLAUSE;
            case BEFORE_PHRASE, BETWEEN_WORDS -> PhraseBreaks.leads(after) ? BEFORE_LEADING : ANYWHERE;
            case AFTER_CONJUNCTION, AFTER_PREPOSITION, AFTER_COUNT, AFTER_ARTICLE -> WITHIN_PHRASE;
            case INSEPARABLE -> NEVER;
        };
    }
}
