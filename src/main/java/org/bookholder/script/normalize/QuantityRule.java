package org.bookholder.script.normalize;

import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Numbers with a unit, ranges, measures by each other, fractions: "12 kg", "2-3 mins", "20%", "1920x1080", "4 1/2". */
final class QuantityRule implements NormalizationRule {
    /**
     * A number, or several that have one unit.
     *
     * @param rare forms that come after those with every other way to say the unit
     * @param single whether the unit is said in the singular
     * @param plain whether it is one number in digits
     */
    private record Value(int end, SpokenForms forms, SpokenForms rare, boolean single, boolean plain) {
        Value(int end, SpokenForms forms) {
            this(end, forms, SpokenForms.NONE, false, false);
        }
    }

    private static final Pattern RANGE = Pattern.compile("(" + NUMBER + ")" + TO + "(" + NUMBER + ")(?![-/\\d])");
    private static final Pattern BY = Pattern.compile("(" + NUMBER + ")\\s?[x\\u00d7]\\s?(" + NUMBER + ")(?![\\dx])");
    /** A larger number over a smaller one, as blood pressure has them. */
    private static final Pattern OVER = Pattern.compile("(\\d{3})/(\\d{2,3})(?![\\d/]|\\.\\d)");

    private static final Pattern DIFFERENCE =
            Pattern.compile("(" + NUMBER + ")\\s?([-\\u2212])\\s?(" + NUMBER + ")(?=(\\s?=)?)");
    private static final Pattern ALONE = Pattern.compile("(" + NUMBER + ")");
    private static final Pattern MORE_OR_LESS =
            Pattern.compile("(" + NUMBER + ")\\s?\u00b1\\s?(" + NUMBER + ")(?![-/\\d])");
    private static final Pattern UNIT = Pattern.compile("([\\s-]?)" + Units.COMPOUND + END);
    /** What is said where the first number of a range is behind this word: "between 20-25". */
    private static final Pattern BETWEEN = Pattern.compile("(?i)\\bbetween\\s(?:about\\s|the\\s)?$");

    /** "16+". */
    private static final Pattern OR_MORE = Pattern.compile("(" + NUMBER + ")\\+" + END);

    private static final Pattern HYPHEN = Pattern.compile(TO);

    /** "4.5 sts/inch": by one of what is written in full. */
    private static final Pattern PER_WORD = Pattern.compile("[\\s-]?" + Units.SYMBOL
            + "/(inch|foot|yard|mile|second|minute|hour|day|night|week|month|year|person|head|cup|row)" + END);

    /** The same amount in another unit follows: "320 yds/290 m". */
    private static final Pattern UNIT_BEFORE_SLASH = Pattern.compile("[\\s-]?" + Units.SYMBOL + "/(?=\\d)");

    /** An amount stands in no more units than this behind its first. */
    private static final int MOST_UNITS = 3;

    private static final Pattern INCHES = Pattern.compile("(\\s?in\\.|\"|'')" + END);
    private static final Pattern FEET = Pattern.compile("'" + END);

    /** A quote that is open is no mark of feet. */
    private static final Pattern OPEN_QUOTE = Pattern.compile("(?:^|[\\s(])'[^']*$");

    private static final String MARKED = "\\s?(?:([\"'])|" + Units.SYMBOL + ")";
    private static final Pattern SIDES =
            Pattern.compile("(" + NUMBER + ")" + MARKED + "\\s?[x\\u00d7]\\s?(" + NUMBER + ")" + MARKED + END);

    /** "6 L/100 km". */
    private static final Pattern PER_SOME =
            Pattern.compile("[\\s-]?" + Units.SYMBOL + "/(10{0,3})\\s?" + Units.SYMBOL + END);

    /** Behind a mass or a volume, what there is of it: "200 g flour". */
    private static final Pattern SUBSTANCE =
            Pattern.compile("[.)]?\\s(?!(?:of|or|and|to|at|in|on|a|an|the|per|each|for|from"
                    + "|with|is|are|was|more|less|if|by|as|than|then)\\b)\\p{Ll}");

    private static final Set<String> MASS_OR_VOLUME = Set.of(
            "kg", "kgs", "g", "mg", "lb", "lbs", "oz", "fl oz", "l", "L", "ml", "mL", "cl", "cL", "dl", "dL", "tsp",
            "tbsp", "c.", "qt", "qts", "gal", "gals");

    /** One and a part, in figures. */
    private static final Pattern ONE_AND =
            Pattern.compile("1(?:\\.50?|\\.25|\\.75|[\\s-]?(?:[^\\d\\s.,]|\\d{1,2}/\\d{1,3}))");

    /** A fraction without a whole number before it. */
    private static final Pattern PROPER = Pattern.compile("\\d{1,2}/\\d{1,3}|[^\\d\\s]");

    private final NumberWords numbers;
    private final Fractions fractions;
    private final Ranges ranges;
    private final UnitRangeRule rangesOfUnits;
    private final UnitParts parts;

    QuantityRule(NumberWords numbers, Fractions fractions) {
        this.numbers = numbers;
        this.fractions = fractions;
        this.ranges = new Ranges(numbers);
        this.rangesOfUnits = new UnitRangeRule(numbers);
        this.parts = new UnitParts(numbers);
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        SpokenSpan span = at(text, from, to, MOST_UNITS);
        return span == null ? null : Units.withoutPints(span, text, from);
    }

    /** The same of an amount that may be given so many times more, in other units. */
    private @Nullable SpokenSpan at(String text, int from, int to, int more) {
        SpokenSpan twice = rangesOfUnits.at(text, from, to);
        if (twice != null) {
            return twice;
        }
        Matcher sides = NormalizationRule.match(SIDES, text, from, to);
        if (sides != null && quotesBefore(text, from) % 2 == 0) {
            return new SpokenSpan(sides.end(), sides(sides));
        }
        Matcher plus = NormalizationRule.match(OR_MORE, text, from, to);
        if (plus != null) {
            SpokenForms beyond = SpokenForms.of("plus", "and over", "or over", "and up", "or more", "and older");
            return new SpokenSpan(
                    plus.end(), numbers.counted(plus.group(1)).first(4).then(beyond));
        }
        Value value = valueAt(text, from, to);
        return value == null ? null : withUnit(value, text, from, to, more);
    }

    /** "120/80": a larger number over a smaller one; null if there is none. */
    private @Nullable Value overAt(String text, int from, int to) {
        Matcher m = NormalizationRule.match(OVER, text, from, to);
        if (m == null || Integer.parseInt(m.group(1)) <= Integer.parseInt(m.group(2))) {
            return null;
        }
        SpokenForms high = numbers.written(m.group(1)).first(3).or(numbers.shortened(m.group(1)));
        SpokenForms low = numbers.written(m.group(2)).first(3);
        SpokenForms rare = high.preferred().then("out of", "slash", "or").then(low.preferred());
        return new Value(m.end(), high.then("over", "").then(low).or(rare));
    }

    private @Nullable Value valueAt(String text, int from, int to) {
        Value over = overAt(text, from, to);
        if (over != null) {
            return over;
        }
        SpokenSpan fraction = fractions.at(text, from, to);
        if (fraction != null) {
            boolean small = PROPER.matcher(text.substring(from, fraction.end())).matches();
            Value range = upTo(fraction, text, to);
            if (range != null) {
                return range;
            }
            return new Value(fraction.end(), fraction.forms(), SpokenForms.NONE, small, false);
        }
        Matcher m = NormalizationRule.match(DIFFERENCE, text, from, to);
        if (m != null && (m.group(2).equals("\u2212") || m.group(4) != null)) {
            SpokenForms less = numbers.counted(m.group(1)).then("minus", "take away", "less");
            return new Value(m.end(), less.then(numbers.counted(m.group(3))));
        }
        m = NormalizationRule.match(MORE_OR_LESS, text, from, to);
        if (m != null) {
            SpokenForms mean = numbers.counted(m.group(1)).first(4).then("plus or minus", "plus minus");
            return new Value(m.end(), mean.then(numbers.counted(m.group(2)).first(4)));
        }
        m = NormalizationRule.match(RANGE, text, from, to);
        if (m != null) {
            return range(m, text);
        }
        m = NormalizationRule.match(BY, text, from, to);
        if (m != null) {
            return new Value(m.end(), by(m.group(1), m.group(2)));
        }
        m = NormalizationRule.match(ALONE, text, from, to);
        if (m == null) {
            return null;
        }
        SpokenForms pair =
                m.group(1).matches("[1-9]\\d[1-9]|[1-9][1-9]0") ? numbers.shortened(m.group(1)) : SpokenForms.NONE;
        return new Value(m.end(), numbers.counted(m.group(1)), pair, NumberWords.isOne(m.group(1)), true);
    }

    private Value range(Matcher m, String text) {
        SpokenForms range = ranges.usual(m.group(1), m.group(2));
        boolean between = BETWEEN.matcher(text.substring(Math.max(0, m.start() - 20), m.start()))
                .find();
        SpokenForms rare = ranges.rare(m.group(1), m.group(2));
        SpokenForms labelled =
                ranges.labelled(m.group(1), m.group(2), text.substring(Math.max(0, m.start() - 12), m.start()));
        return new Value(
                m.end(),
                between ? ranges.between(m.group(1), m.group(2)).or(range) : range,
                !labelled.isEmpty()
                        ? labelled.or(rare)
                        : between ? rare : rare.or(ranges.withBetween(m.group(1), m.group(2))),
                false,
                false);
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

    /** "½ – 1", "1 1/2-2": a range that begins with a fraction; null if there is none. */
    private @Nullable Value upTo(SpokenSpan fraction, String text, int to) {
        Matcher hyphen = NormalizationRule.match(HYPHEN, text, fraction.end(), to);
        if (hyphen == null) {
            return null;
        }
        SpokenSpan last = fractions.at(text, hyphen.end(), to);
        Matcher number = last == null ? NormalizationRule.match(ALONE, text, hyphen.end(), to) : null;
        if (number != null) {
            last = new SpokenSpan(number.end(), numbers.counted(number.group(1)).first(2));
        }
        return last == null
                ? null
                : new Value(
                        last.end(),
                        fraction.forms()
                                .first(5)
                                .then("to", "or")
                                .then(last.forms().first(3)));
    }

    private @Nullable SpokenSpan perSome(Value value, String text, int to) {
        Matcher some = NormalizationRule.match(PER_SOME, text, value.end, to);
        if (some == null) {
            return null;
        }
        SpokenForms number = numbers.counted(some.group(2)).first(4);
        SpokenForms per = SpokenForms.of("per", "a", "for").then(number);
        if (some.group(2).length() > 2) {
            String scale = some.group(2).length() == 3 ? "hundred" : "thousand";
            per = per.or("a " + scale, "per " + scale);
        }
        SpokenForms unit = Units.said(some.group(1), value.single).first(3);
        return new SpokenSpan(
                some.end(),
                value.forms
                        .first(2)
                        .then(unit)
                        .then(per)
                        .then(Units.said(some.group(3), false).first(1)));
    }

    private @Nullable SpokenSpan perWord(Value value, String text, int to) {
        Matcher per = NormalizationRule.match(PER_WORD, text, value.end, to);
        if (per == null) {
            return null;
        }
        String word = per.group(2);
        SpokenForms forms =
                value.forms.first(5).then(Units.said(per.group(1), value.single).first(2));
        return new SpokenSpan(per.end(), forms.then("per " + word, Units.article(word) + " " + word, "to the " + word));
    }

    private @Nullable SpokenSpan inTwoUnits(Value value, String text, int to, int more) {
        Matcher unit = more == 0 ? null : NormalizationRule.match(UNIT_BEFORE_SLASH, text, value.end, to);
        SpokenSpan other = unit == null ? null : at(text, unit.end(), to, more - 1);
        if (unit == null || other == null) {
            return null;
        }
        SpokenForms first = value.forms.preferred().or(value.rare.first(1)).or(value.forms.first(2));
        SpokenForms forms =
                first.then(Units.said(unit.group(1), value.single).first(2)).first(5);
        return new SpokenSpan(
                other.end(),
                forms.then("", "or")
                        .then(other.forms().first(3).or(other.forms()))
                        .besides(forms.first(3).then("slash").then(other.forms().first(2))));
    }

    private @Nullable SpokenSpan withUnit(Value value, String text, int from, int to, int more) {
        String written = text.substring(from, value.end);
        SpokenSpan several = perSome(value, text, to);
        several = several == null ? perWord(value, text, to) : several;
        several = several == null ? inTwoUnits(value, text, to, more) : several;
        if (several != null) {
            return several;
        }
        Matcher unit = NormalizationRule.match(UNIT, text, value.end, to);
        if (unit != null) {
            SpokenForms forms = withUnit(value, written, unit);
            boolean of = MASS_OR_VOLUME.contains(unit.group(3))
                    && NormalizationRule.match(SUBSTANCE, text, unit.end(), text.length()) != null;
            return new SpokenSpan(unit.end(), of ? forms.besides(forms.first(12).then("of")) : forms);
        }
        Matcher inches = NormalizationRule.match(INCHES, text, value.end, to);
        if (inches != null && (!inches.group(1).equals("\"") || quotesBefore(text, value.end) % 2 == 0)) {
            return new SpokenSpan(inches.end(), unitForms(value, written, "\u2033"));
        }
        Matcher feet = NormalizationRule.match(FEET, text, value.end, to);
        if (feet != null && !OPEN_QUOTE.matcher(text.substring(0, value.end)).find()) {
            return new SpokenSpan(feet.end(), unitForms(value, written, "\u2032"));
        }
        Matcher measure =
                ONE_AND.matcher(written).matches() ? NormalizationRule.match(Units.MEASURE, text, value.end, to) : null;
        if (measure != null) {
            SpokenForms named = value.forms.then(text.substring(value.end + 1, measure.end()));
            return new SpokenSpan(measure.end(), named.besides(oneAnd(value.forms, measure.group(1))));
        }
        return value.plain || !NormalizationRule.endsAt(text, value.end)
                ? null
                : new SpokenSpan(value.end, value.forms.besides(value.rare));
    }

    private SpokenForms withUnit(Value value, String written, Matcher unit) {
        String symbol = unit.group(3);
        if (unit.end() > unit.end(3) || unit.group(2) != null) {
            SpokenForms one =
                    value.forms.preferred().then(Units.compound(unit, 2, true).first(6));
            return value.forms
                    .first(4)
                    .then(Units.compound(unit, 2, value.single))
                    .besides(value.rare
                            .then(Units.compound(unit, 2, value.single).first(2))
                            .or(one));
        }
        SpokenForms forms = unitForms(value, written, symbol);
        if (symbol.equals("mmHg") && written.indexOf('/') > 0) {
            return forms.besides(value.forms.first(8));
        }
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
        String one = String.join(" ", Units.said(symbol, true).first());
        String article = Units.article(one);
        SpokenForms rare = value.rare.first(3).then(unit.first(value.plain ? 5 : 3));
        if (symbol.startsWith("°") && symbol.length() > 1) {
            rare = value.forms.preferred().or(value.rare.first(1)).or(rare);
        }
        Matcher range = RANGE.matcher(written);
        if (range.matches()) {
            rare = rare.first(10)
                    .or(numbers.counted(range.group(1))
                            .preferred()
                            .then(unit.preferred())
                            .then("to")
                            .then(numbers.counted(range.group(2)).preferred())
                            .then(unit.preferred()));
        } else if (ONE_AND.matcher(written).matches()) {
            rare = rare.or(oneAnd(value.forms, one));
        } else if (value.plain) {
            rare = rare.or(value.single ? SpokenForms.of(article + " " + one) : parts.of(written, symbol));
        } else if (value.single) {
            rare = value.forms.first(2).then("of " + article + " " + one).or(rare);
        }
        return value.forms.then(unit).besides(rare);
    }

    /** "An hour and a half", "a mile and three quarters"; {@code forms} begin with "one and". */
    private static SpokenForms oneAnd(SpokenForms forms, String unit) {
        SpokenForms parts = new SpokenForms(forms.all().stream()
                .filter(form -> form.size() > 2 && form.subList(0, 2).equals(List.of("one", "and")))
                .map(form -> form.subList(1, form.size()))
                .limit(3)
                .toList());
        return SpokenForms.of(Units.article(unit) + " " + unit, unit, "one " + unit)
                .then(parts);
    }

    /** "2 in x 4 in": the unit at both ends or at the last one alone. */
    private SpokenForms sides(Matcher m) {
        SpokenForms unit = unit(m.group(5), m.group(6));
        SpokenForms first = unit(m.group(2), m.group(3));
        SpokenForms wide = numbers.counted(m.group(1)).preferred();
        SpokenForms high = numbers.counted(m.group(4)).preferred();
        SpokenForms named = wide.then(first.first(3)).then("by").then(high).then(unit.first(3));
        SpokenForms once = by(m.group(1), m.group(4))
                .first(2)
                .then(unit.first(3))
                .or(wide.then(first.first(2)).then("by").then(high));
        return first.equals(unit) ? named.besides(once) : named;
    }

    private static SpokenForms unit(@Nullable String mark, @Nullable String symbol) {
        return Units.said(symbol != null ? symbol : "'".equals(mark) ? "\u2032" : "\u2033", false);
    }

    private static long quotesBefore(String text, int end) {
        return text.substring(0, end).chars().filter(c -> c == '"').count();
    }
}
