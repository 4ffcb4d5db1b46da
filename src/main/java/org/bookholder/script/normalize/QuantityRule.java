package org.bookholder.script.normalize;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Numbers with a unit, ranges, measures by each other, fractions: "12 kg", "2-3 mins", "20%", "1920x1080", "4 1/2". */
final class QuantityRule implements NormalizationRule {
    private record Value(int end, SpokenForms forms, boolean single, boolean plain) {}

    private static final Pattern RANGE = Pattern.compile("(" + NUMBER + ")" + TO + "(" + NUMBER + ")(?![-/\\d])");
    private static final Pattern BY = Pattern.compile("(" + NUMBER + ")\\s?[x\\u00d7]\\s?(" + NUMBER + ")(?![\\dx])");
    private static final Pattern DIFFERENCE =
            Pattern.compile("(" + NUMBER + ")\\s?([-\\u2212])\\s?(" + NUMBER + ")(?=(\\s?=)?)");
    private static final Pattern TIMES = Pattern.compile("(" + NUMBER + ")[x\u00d7]" + END);
    private static final Pattern ALONE = Pattern.compile("(" + NUMBER + ")");
    private static final Pattern UNIT = Pattern.compile("([\\s-]?)" + Units.SYMBOL + END);
    private static final Pattern UNIT_PER = Pattern.compile("([\\s-]?)" + Units.SYMBOL + "/" + Units.SYMBOL + END);
    private static final Pattern RANGE_OF_UNITS =
            Pattern.compile("(" + NUMBER + ")\\s?" + Units.SYMBOL + TO + "(" + NUMBER + ")\\s?" + Units.SYMBOL + END);
    private static final Pattern FEET_AND_INCHES = Pattern.compile("(\\d{1,3})'\\s?(\\d{1,2})(?:\"|'')" + END);
    private static final Pattern INCHES = Pattern.compile("(\\s?in\\.|\"|'')" + END);
    private static final Pattern ENDS = Pattern.compile(END);

    /** A fraction without a whole number before it. */
    private static final Pattern PROPER = Pattern.compile("\\d{1,2}/\\d{1,3}|[^\\d\\s]");

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
            return new SpokenSpan(twice.end(), rangeOfUnits(twice));
        }
        Matcher times = NormalizationRule.match(TIMES, text, from, to);
        if (times != null) {
            return new SpokenSpan(times.end(), times(times.group(1)));
        }
        Value value = valueAt(text, from, to);
        return value == null ? null : withUnit(value, text, from, to);
    }

    /** "50 ms - 2 s"; only a unit that both ends have may be said once. */
    private SpokenForms rangeOfUnits(Matcher m) {
        SpokenForms low = numbers.counted(m.group(1));
        SpokenForms high = numbers.counted(m.group(3));
        SpokenForms unit = unit(m.group(4), false).preferred();
        SpokenForms first = unit(m.group(2), NumberWords.isOne(m.group(1)));
        SpokenForms named =
                low.preferred().then(first.first(3)).then("to").then(high).then(unit);
        boolean same = unit(m.group(2), false).equals(unit(m.group(4), false));
        return same ? low.then("to").then(high).then(unit).or(named) : named;
    }

    private @Nullable Value valueAt(String text, int from, int to) {
        SpokenSpan fraction = fractions.at(text, from, to);
        if (fraction != null) {
            boolean small = PROPER.matcher(text.substring(from, fraction.end())).matches();
            return new Value(fraction.end(), fraction.forms(), small, false);
        }
        Matcher m = NormalizationRule.match(DIFFERENCE, text, from, to);
        if (m != null && (m.group(2).equals("\u2212") || m.group(4) != null)) {
            SpokenForms less = numbers.counted(m.group(1)).then("minus", "take away", "less");
            return new Value(m.end(), less.then(numbers.counted(m.group(3))), false, false);
        }
        m = NormalizationRule.match(RANGE, text, from, to);
        if (m != null) {
            return new Value(m.end(), range(m.group(1), m.group(2)), false, false);
        }
        m = NormalizationRule.match(BY, text, from, to);
        if (m != null) {
            SpokenForms wide = numbers.written(m.group(1));
            return new Value(m.end(), wide.then("by", "times", "x").then(numbers.written(m.group(2))), false, false);
        }
        m = NormalizationRule.match(ALONE, text, from, to);
        return m == null ? null : new Value(m.end(), numbers.counted(m.group(1)), NumberWords.isOne(m.group(1)), true);
    }

    /**
     * Both ends of a range are mostly said in the same manner; the likely ways come first. "10 - 3" may be a difference as well.
     */
    private SpokenForms range(String first, String last) {
        SpokenForms low = numbers.written(first);
        SpokenForms high = numbers.written(last);
        SpokenForms forms = low.preferred().then("to", "through", "until", "").then(high.preferred());
        if (NumberWords.value(first).compareTo(NumberWords.value(last)) > 0) {
            forms = forms.or(low.preferred().then("minus").then(high.preferred()));
        }
        for (int i = 1; i < Math.min(low.all().size(), high.all().size()); i++) {
            SpokenForms one = new SpokenForms(List.of(low.all().get(i)));
            forms = forms.or(
                    one.then("to", "").then(new SpokenForms(List.of(high.all().get(i)))));
        }
        return forms.or(low.then("to").then(high));
    }

    /** "2x": so many times, as the author of "2x faster" means it. */
    private SpokenForms times(String number) {
        SpokenForms forms = numbers.counted(number).first(4).then("x", "times");
        return number.equals("2")
                ? forms.or("twice", "twice as", "double")
                : forms.or(numbers.counted(number).preferred().then("times as"));
    }

    /** A small part of one unit: "half a percent", "a thousandth of an inch". */
    private static SpokenForms partOf(String number, String unit) {
        String digits = number.startsWith("0.") ? number.substring(1) : number;
        String[] part = switch (digits) {
            case ".5" -> new String[] {"half a", "half an", "half of one", "half"};
            case ".25" -> new String[] {"a quarter of a", "a quarter of an", "a quarter", "quarter of a"};
            case ".1" -> new String[] {"one tenth of a", "a tenth of a", "one tenth of an", "a tenth of an"};
            case ".01" -> new String[] {"one hundredth of a", "a hundredth of a", "a hundredth of an"};
            case ".001" -> new String[] {"one thousandth of a", "a thousandth of a", "a thousandth of an"};
            default -> new String[0];
        };
        return part.length == 0 ? SpokenForms.NONE : SpokenForms.of(part).then(unit);
    }

    private @Nullable SpokenSpan withUnit(Value value, String text, int from, int to) {
        Matcher unit = NormalizationRule.match(UNIT, text, value.end, to);
        if (unit != null) {
            String symbol = unit.group(2);
            SpokenForms forms = unitForms(value, text.substring(from, value.end), symbol);
            // "5m" and "4 g" are also said letter by letter
            boolean letters = value.plain && symbol.length() == 1 && Character.isLetter(symbol.charAt(0));
            return new SpokenSpan(
                    unit.end(), letters ? forms.or(value.forms.preferred().then(Typography.lower(symbol))) : forms);
        }
        Matcher per = NormalizationRule.match(UNIT_PER, text, value.end, to);
        if (per != null) {
            SpokenForms one = unit(per.group(3), true).preferred();
            SpokenForms forms =
                    value.forms.first(3).then(unit(per.group(2), value.single).first(3));
            return new SpokenSpan(per.end(), forms.then("per", "a", "an").then(one));
        }
        Matcher inches = NormalizationRule.match(INCHES, text, value.end, to);
        if (inches != null && (!inches.group(1).equals("\"") || quotesBefore(text, value.end) % 2 == 0)) {
            return new SpokenSpan(inches.end(), value.forms.then(value.single ? "inch" : "inches", "inch", ""));
        }
        boolean ends = NormalizationRule.match(ENDS, text, value.end, Math.max(value.end, to)) != null;
        return value.plain || !ends ? null : new SpokenSpan(value.end, value.forms);
    }

    private SpokenForms unitForms(Value value, String written, String symbol) {
        SpokenForms unit = unit(symbol, value.single);
        SpokenForms forms = value.forms.then(unit);
        String number = value.plain ? written : "";
        if (symbol.startsWith("°") && number.matches("[1-9]\\d[1-9]|[1-9][1-9]0")) {
            SpokenForms pair = numbers.shortened(number);
            forms = forms.first(SpokenForms.MOST - 5)
                    .or(pair.then(unit.first(4)))
                    .or(pair);
        }
        String one = String.join(" ", unit(symbol, true).first());
        SpokenForms parts = value.plain
                ? partOf(number, one)
                : value.single ? value.forms.preferred().then("of a", "of an").then(one) : SpokenForms.NONE;
        return parts.isEmpty() ? forms : forms.first(SpokenForms.MOST - 5).or(parts);
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
