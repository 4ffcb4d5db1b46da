package org.bookholder.script.normalize;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Ranges of which both ends have their unit: "50 ms - 2 s", "5 cm to 8 cm". */
final class UnitRangeRule implements NormalizationRule {
    private static final Pattern RANGE = Pattern.compile("(" + NUMBER + ")\\s?" + Units.SYMBOL + "(" + TO
            + "|\\sto\\s|\\s?\u00b1\\s?)(" + NUMBER + ")\\s?" + Units.SYMBOL + END);

    private final NumberWords numbers;

    UnitRangeRule(NumberWords numbers) {
        this.numbers = numbers;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher range = NormalizationRule.match(RANGE, text, from, to);
        return range == null ? null : new SpokenSpan(range.end(), range(range));
    }

    /** Only a unit that both ends have may be said once. */
    private SpokenForms range(Matcher m) {
        SpokenForms low = numbers.counted(m.group(1));
        SpokenForms high = numbers.counted(m.group(4));
        SpokenForms between = m.group(3).indexOf('\u00b1') >= 0
                ? SpokenForms.of("plus or minus")
                : SpokenForms.of("to", "through", "until").first(m.group(3).equals(" to ") ? 1 : 3);
        SpokenForms unit = Units.said(m.group(5), false).first(4);
        SpokenForms first = Units.said(m.group(2), NumberWords.isOne(m.group(1)));
        SpokenForms named = low.preferred()
                .then(first.first(2))
                .then(between)
                .then(high.preferred())
                .then(unit.first(2));
        named = named.or(low.first(3)
                .then(first.first(1))
                .then(between.first(1))
                .then(high.first(3))
                .then(unit.first(1)));
        boolean same = Units.said(m.group(2), false).equals(Units.said(m.group(5), false));
        return same
                ? low.first(3)
                        .then(between)
                        .then(high.first(3))
                        .then(unit)
                        .first(SpokenForms.MOST / 2)
                        .or(named)
                : named;
    }
}
