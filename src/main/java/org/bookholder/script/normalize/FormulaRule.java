package org.bookholder.script.normalize;

import org.jspecify.annotations.Nullable;

/** Formulae between dollar signs: "$x^2 + y^2$", "$n$th", "$\alpha$-decay". */
final class FormulaRule implements NormalizationRule {
    private final LatexWords words;

    FormulaRule(LatexWords words) {
        this.words = words;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        int end = Latex.end(text, from);
        if (end < 0 || end > to) {
            return null;
        }
        int signs = text.startsWith("$$", from) ? 2 : 1;
        SpokenForms said = words.of(text.substring(from + signs, end - signs));
        int wordEnd = end;
        while (wordEnd < to && text.charAt(wordEnd) != ' ') {
            wordEnd++;
        }
        String behind = text.substring(end, wordEnd).replaceAll("[.,;:!?)\"'\\]]+$", "");
        if (said.isEmpty() || behind.isEmpty()) {
            return new SpokenSpan(end, said);
        }
        if (behind.equals("th")) {
            return new SpokenSpan(wordEnd, said.then("th").or(joined(said)));
        }
        return new SpokenSpan(
                wordEnd,
                behind.matches("[-\u2013]\\p{L}{1,30}") ? said.then(LetterForms.of(behind.substring(1))) : said);
    }

    /** "nth" beside "n th". */
    private static SpokenForms joined(SpokenForms said) {
        return SpokenForms.of(String.join(" ", said.first()) + "th");
    }
}
