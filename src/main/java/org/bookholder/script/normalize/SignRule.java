package org.bookholder.script.normalize;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Numbers with a sign: "-5°C", "-$40", "−3.5 %", "+2". A minus must be said; a plus may be left out. */
final class SignRule implements NormalizationRule {
    private static final Pattern SIGN =
            Pattern.compile("([-\\u2013\\u2212+])(?=\\.?\\d|[$£€¥₹]\\s?\\.?\\d|[\\u00bc-\\u00be])");
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
                return new SpokenSpan(
                        value.end(),
                        sign.group(1).equals("+")
                                ? SpokenForms.of("plus", "").then(value.forms())
                                : negative(value, text, sign.end(), to));
            }
        }
        return null;
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
