package org.bookholder.script.normalize;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Numbers with a unit, ranges, measures by each other, fractions: "12 kg", "2-3 mins", "20%", "1920x1080", "4 1/2". */
final class QuantityRule implements NormalizationRule {
    private record Value(int end, SpokenForms forms, boolean single, boolean plain) {}

    private static final Pattern RANGE = Pattern.compile("(" + NUMBER + ")" + TO + "(" + NUMBER + ")(?![-/\\d])");
    private static final Pattern BY = Pattern.compile("(" + NUMBER + ")\\s?[x\\u00d7]\\s?(" + NUMBER + ")(?![\\dx])");
    private static final Pattern ALONE = Pattern.compile("(" + NUMBER + ")");
    private static final Pattern UNIT = Pattern.compile("([\\s-]?)" + Units.SYMBOL + END);
    private static final Pattern RANGE_OF_UNITS =
            Pattern.compile("(" + NUMBER + ")\\s?" + Units.SYMBOL + TO + "(" + NUMBER + ")\\s?" + Units.SYMBOL + END);
    private static final Pattern FEET_AND_INCHES = Pattern.compile("(\\d{1,3})'\\s?(\\d{1,2})(?:\"|'')" + END);
    private static final Pattern INCHES = Pattern.compile("(\\s?in\\.|\")" + END);
    private static final Pattern ENDS = Pattern.compile(END);

    private final NumberWords numbers;
    private final Fractions fractions;

    QuantityRule(NumberWords numbers, Fractions fractions) {
        this.numbers = numbers;
        this.fractions = fractions;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher feet = NormalizationRule.match(FEET_AND_INCHES, text, from, to);
        if (feet != null) {
            SpokenForms tall = numbers.counted(feet.group(1)).preferred();
            SpokenForms rest = numbers.counted(feet.group(2)).preferred();
            return new SpokenSpan(
                    feet.end(),
                    tall.then("foot", "feet", "")
                            .then(rest)
                            .or(tall.then("feet").then(rest).then("inches")));
        }
        Matcher twice = NormalizationRule.match(RANGE_OF_UNITS, text, from, to);
        if (twice != null) {
            SpokenForms low = numbers.counted(twice.group(1));
            SpokenForms high = numbers.counted(twice.group(3));
            SpokenForms unit = unit(twice.group(4), false).preferred();
            SpokenForms forms = low.then("to").then(high).then(unit);
            SpokenForms named = low.preferred().then(unit(twice.group(2), false).preferred());
            return new SpokenSpan(
                    twice.end(), forms.or(named.then("to").then(high).then(unit)));
        }
        Value value = valueAt(text, from, to);
        return value == null ? null : withUnit(value, text, to);
    }

    private @Nullable Value valueAt(String text, int from, int to) {
        SpokenSpan fraction = fractions.at(text, from, to);
        if (fraction != null) {
            boolean small = text.substring(from, fraction.end()).indexOf(' ') < 0;
            return new Value(fraction.end(), fraction.forms(), small, false);
        }
        Matcher m = NormalizationRule.match(RANGE, text, from, to);
        if (m != null) {
            SpokenForms low = numbers.written(m.group(1));
            return new Value(m.end(), low.then("to", "").then(numbers.written(m.group(2))), false, false);
        }
        m = NormalizationRule.match(BY, text, from, to);
        if (m != null) {
            SpokenForms wide = numbers.written(m.group(1));
            return new Value(m.end(), wide.then("by", "times", "x").then(numbers.written(m.group(2))), false, false);
        }
        m = NormalizationRule.match(ALONE, text, from, to);
        return m == null ? null : new Value(m.end(), numbers.counted(m.group(1)), NumberWords.isOne(m.group(1)), true);
    }

    private @Nullable SpokenSpan withUnit(Value value, String text, int to) {
        Matcher unit = NormalizationRule.match(UNIT, text, value.end, to);
        if (unit != null) {
            String symbol = unit.group(2);
            SpokenForms forms = value.forms.then(unit(symbol, value.single));
            // "5m" and "4 g" are also said letter by letter
            boolean letters = value.plain && symbol.length() == 1 && Character.isLetter(symbol.charAt(0));
            return new SpokenSpan(
                    unit.end(), letters ? forms.or(value.forms.preferred().then(Typography.lower(symbol))) : forms);
        }
        Matcher inches = NormalizationRule.match(INCHES, text, value.end, to);
        if (inches != null && (!inches.group(1).equals("\"") || quotesBefore(text, value.end) % 2 == 0)) {
            return new SpokenSpan(inches.end(), value.forms.then(value.single ? "inch" : "inches", "inch", ""));
        }
        boolean ends = NormalizationRule.match(ENDS, text, value.end, Math.max(value.end, to)) != null;
        return value.plain || !ends ? null : new SpokenSpan(value.end, value.forms);
    }

    private static SpokenForms unit(String symbol, boolean single) {
        Units.Unit unit = Units.of(symbol);
        if (unit == null) {
            throw new IllegalArgumentException("symbol (" + symbol + ") must be a known unit");
        }
        return unit.forms(single);
    }

    private static long quotesBefore(String text, int end) {
        return text.substring(0, end).chars().filter(c -> c == '"').count();
    }
}
