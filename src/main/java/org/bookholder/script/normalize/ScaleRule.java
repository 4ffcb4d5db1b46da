package org.bookholder.script.normalize;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Large round numbers: "1.5 million", "2 billion", "100 million km". */
final class ScaleRule implements NormalizationRule {
    private static final Pattern SCALED =
            Pattern.compile("(" + NUMBER + ")\\s(hundred|thousand|million|billion|trillion)\\b");

    /** A unit of measurement behind it, not a letter that may be something else. */
    private static final Pattern UNIT = Pattern.compile("[\\s-](?![A-Za-z]\\b)" + Units.COMPOUND + END);

    private static final Pattern AND_A_HALF = Pattern.compile("([1-9]\\d{0,2})\\.50?");

    private final NumberWords numbers;

    ScaleRule(NumberWords numbers) {
        this.numbers = numbers;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher m = NormalizationRule.match(SCALED, text, from, to);
        if (m == null) {
            return null;
        }
        SpokenForms forms = scaled(m.group(1), m.group(2));
        Matcher unit = NormalizationRule.match(UNIT, text, m.end(), to);
        return unit == null
                ? new SpokenSpan(m.end(), forms)
                : new SpokenSpan(unit.end(), forms.first(6).then(Units.compound(unit, 1, false)));
    }

    /** A number of thousands, millions and so on: "one point five million", "a million and a half". */
    SpokenForms scaled(String number, String scale) {
        SpokenForms forms = numbers.counted(number).then(scale);
        if (NumberWords.isOne(number)) {
            return forms.or("a " + scale);
        }
        if (scale.equals("thousand") && number.matches("\\d\\.\\d")) {
            forms = forms.or(numbers.counted(number.replace(".", "") + "00"));
        }
        Matcher half = AND_A_HALF.matcher(number);
        if (!half.matches()) {
            return forms;
        }
        SpokenForms whole = numbers.counted(half.group(1)).preferred();
        SpokenForms behind = whole.then(scale + " and a half");
        return half.group(1).equals("1") ? forms.or(behind).or("a " + scale + " and a half") : forms.or(behind);
    }
}
