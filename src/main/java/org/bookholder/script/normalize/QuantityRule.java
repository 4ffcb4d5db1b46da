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
    private static final Pattern MORE_OR_LESS =
            Pattern.compile("(" + NUMBER + ")\\s?\u00b1\\s?(" + NUMBER + ")(?![-/\\d])");
    private static final Pattern UNIT = Pattern.compile("([\\s-]?)" + Units.COMPOUND + END);
    private static final Pattern RANGE_OF_UNITS = Pattern.compile("(" + NUMBER + ")\\s?" + Units.SYMBOL + "(" + TO
            + "|\\sto\\s|\\s?\u00b1\\s?)(" + NUMBER + ")\\s?" + Units.SYMBOL + END);

    /** What is said where the first number of a range is behind this word: "between 20-25". */
    private static final Pattern BETWEEN = Pattern.compile("(?i)\\bbetween\\s(?:about\\s|the\\s)?$");

    private static final Pattern INCHES = Pattern.compile("(\\s?in\\.|\"|'')" + END);

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
        m = NormalizationRule.match(MORE_OR_LESS, text, from, to);
        if (m != null) {
            SpokenForms mean = numbers.counted(m.group(1)).first(4).then("plus or minus");
            return new Value(m.end(), mean.then(numbers.counted(m.group(2)).first(4)), false, false);
        }
        m = NormalizationRule.match(RANGE, text, from, to);
        if (m != null) {
            SpokenForms range = range(m.group(1), m.group(2));
            boolean between = BETWEEN.matcher(text.substring(Math.max(0, from - 20), from))
                    .find();
            return new Value(m.end(), between ? between(m.group(1), m.group(2)).or(range) : range, false, false);
        }
        m = NormalizationRule.match(BY, text, from, to);
        if (m != null) {
            return new Value(m.end(), by(m.group(1), m.group(2)), false, false);
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
        if (first.equals("0") || last.equals("0")) {
            forms = forms.or(score(first, last, "nil")).or(score(first, last, "nothing"));
        }
        return forms.or(low.then("to").then(high));
    }

    /** "3-0" as a score. */
    private SpokenForms score(String first, String last, String zero) {
        SpokenForms low = first.equals("0")
                ? SpokenForms.of(zero)
                : numbers.counted(first).preferred();
        return low.then(
                last.equals("0") ? SpokenForms.of(zero) : numbers.counted(last).preferred());
    }

    private SpokenForms between(String first, String last) {
        return numbers.written(first)
                .preferred()
                .then("and")
                .then(numbers.written(last).preferred());
    }

    /** "1920x1080"; both sides are mostly said in the same manner. */
    private SpokenForms by(String wide, String high) {
        SpokenForms by = SpokenForms.of("by", "times", "x");
        SpokenForms forms = numbers.written(wide)
                .preferred()
                .then(by)
                .then(numbers.written(high).preferred());
        forms = forms.or(numbers.shortened(wide).then("by").then(numbers.shortened(high)));
        SpokenForms sides = numbers.written(wide).then("by").then(numbers.written(high));
        return forms.or(sides).or(numbers.written(wide).then("times", "x").then(numbers.written(high)));
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
            return new SpokenSpan(unit.end(), withUnit(value, text.substring(from, value.end), unit));
        }
        Matcher inches = NormalizationRule.match(INCHES, text, value.end, to);
        if (inches != null && (!inches.group(1).equals("\"") || quotesBefore(text, value.end) % 2 == 0)) {
            return new SpokenSpan(inches.end(), value.forms.then(value.single ? "inch" : "inches", "inch", ""));
        }
        return value.plain || !NormalizationRule.endsAt(text, value.end)
                ? null
                : new SpokenSpan(value.end, value.forms);
    }

    private SpokenForms withUnit(Value value, String written, Matcher unit) {
        String symbol = unit.group(3);
        if (unit.end() > unit.end(3) || unit.group(2) != null) {
            return value.forms.first(4).then(Units.compound(unit, 2, value.single));
        }
        SpokenForms forms = unitForms(value, written, symbol);
        if (!value.plain || symbol.length() > 1 || !Character.isLetter(symbol.charAt(0))) {
            return forms;
        }
        // "5m" and "4 g" are also said letter by letter, "15 N" rather so
        boolean attached = unit.group(1).isEmpty();
        SpokenForms letter =
                (attached ? numbers.written(written).first(8) : value.forms.preferred()).then(Typography.lower(symbol));
        return Character.isUpperCase(symbol.charAt(0)) && !symbol.equals("L")
                ? letter.or(forms)
                : forms.first(SpokenForms.MOST - 1).or(letter);
    }

    private SpokenForms unitForms(Value value, String written, String symbol) {
        SpokenForms unit = Units.said(symbol, value.single);
        SpokenForms forms = value.forms.then(unit);
        String number = value.plain ? written : "";
        if (symbol.startsWith("°") && symbol.length() > 1) {
            forms = forms.first(SpokenForms.MOST - 6).or(value.forms.preferred());
        }
        if (symbol.startsWith("°") && number.matches("[1-9]\\d[1-9]|[1-9][1-9]0")) {
            SpokenForms pair = numbers.shortened(number);
            forms = forms.first(SpokenForms.MOST - 5)
                    .or(pair.then(unit.first(4)))
                    .or(pair);
        }
        String one = String.join(" ", Units.said(symbol, true).first());
        SpokenForms parts = value.plain
                ? partOf(number, one)
                : value.single ? value.forms.preferred().then("of a", "of an").then(one) : SpokenForms.NONE;
        return parts.isEmpty() ? forms : forms.first(SpokenForms.MOST - 5).or(parts);
    }

    private static long quotesBefore(String text, int end) {
        return text.substring(0, end).chars().filter(c -> c == '"').count();
    }
}
