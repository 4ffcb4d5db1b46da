package org.bookholder.view.layout;

import org.bookholder.wording.PhraseBreaks;

/** Penalties for ending a row between two words. Ideally a row holds one phrase that is spoken in one breath. */
final class RowBreakRules {
    /** Greater than anything that a better place elsewhere could save. */
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
