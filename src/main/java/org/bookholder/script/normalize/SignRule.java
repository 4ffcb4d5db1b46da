package org.bookholder.script.normalize;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Numbers with a sign: "-5°C", "-$40", "−3.5 %", "+2", "~5 kg", "±3 dB". A minus must be said; a plus may be left out. */
final class SignRule implements NormalizationRule {
    private static final Pattern SIGN = Pattern.compile(
            "([-\\u2013\\u2212+]|[~\\u2248\\u00b1<>\\u2264\\u2265]\\s?)(?=\\.?\\d|[$£€¥₹]\\s?\\.?\\d|[\\u00bc-\\u00be])");
    private static final Pattern DEGREES = Pattern.compile("(" + NUMBER + ")\\s?°");

    private final NumberWords numbers;
    private final List<NormalizationRule> values;

    /**
     * A rule.
     *
     * @param values the rules for what may stand behind a sign
     */
    SignRule(NumberWords numbers, List<NormalizationRule> values) {
        this.numbers = numbers;
        this.values = values;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher sign = NormalizationRule.match(SIGN, text, from, to);
        if (sign == null) {
            return null;
        }
        for (NormalizationRule rule : values) {
            SpokenSpan value = rule.at(text, sign.end(), to);
            if (value != null && !value.forms().spoken().isEmpty()) {
                boolean minus = "-\u2013\u2212".indexOf(sign.group(1).charAt(0)) >= 0;
                return new SpokenSpan(
                        value.end(),
                        minus
                                ? negative(value, text, sign.end(), to)
                                : sign(sign.group(1).charAt(0)).then(value.forms()));
            }
        }
        return null;
    }

    private static SpokenForms sign(char sign) {
        return switch (sign) {
            case '+' -> SpokenForms.of("plus", "");
            case '\u00b1' -> SpokenForms.of("plus or minus", "plus minus");
            case '<' -> SpokenForms.of("less than", "is less than", "under", "below", "fewer than");
            case '>' -> SpokenForms.of("greater than", "is greater than", "more than", "is more than", "over");
            case '\u2264' ->
                SpokenForms.of("at most", "less than or equal to", "up to", "is less than or equal to", "is at most");
            case '\u2265' ->
                SpokenForms.of("at least", "greater than or equal to", "is greater than or equal to", "is at least");
            default -> SpokenForms.of("about", "approximately", "around", "roughly");
        };
    }

    private SpokenForms negative(SpokenSpan value, String text, int from, int to) {
        SpokenForms minus = SpokenForms.of("minus", "negative");
        SpokenForms forms = minus.then(value.forms());
        Matcher degrees = NormalizationRule.match(DEGREES, text, from, to);
        if (degrees == null) {
            return forms;
        }
        SpokenForms bare = numbers.counted(degrees.group(1)).preferred();
        return forms.first(SpokenForms.MOST - 5)
                .or(minus.then(bare))
                .or(bare.then("degrees below zero", "degrees below", "below", "below zero"));
    }
}
