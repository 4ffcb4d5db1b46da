package org.bookholder.view.layout;

import org.bookholder.wording.PhraseBreaks;

/** What it costs to end a row between two words. A row should hold what is said in one breath. */
final class RowBreakRules {
    /** More than any row can gain elsewhere. */
    static final double NEVER = 10_000;

    /** At the end of a sentence. */
    static final double STOP = -35;

    private RowBreakRules() {}

    /** Penalty for ending a row between {@code written} and {@code next}; negative for a good place. */
    static double bond(String written, String next) {
        return switch (PhraseBreaks.between(written, next)) {
            case SENTENCE_END -> STOP;
            case CLAUSE_END -> -12;
            case BEFORE_PHRASE -> -8;
            case BETWEEN_WORDS -> 0;
            case AFTER_CONJUNCTION -> 20;
            case AFTER_PREPOSITION -> 40;
            case AFTER_COUNT -> 50;
            case AFTER_ARTICLE -> 60;
            case INSEPARABLE -> NEVER;
        };
    }
}
