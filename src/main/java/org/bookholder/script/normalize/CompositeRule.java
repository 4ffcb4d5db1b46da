package org.bookholder.script.normalize;

import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Quantities of two or three units: "1h 20m", "5 ft 7 in", "5'7\"", "2 lb 3 oz", "01:12:30". */
final class CompositeRule implements NormalizationRule {
    /** A unit, as written (part of a pattern) and as said. */
    private record Part(String symbols, String one, String many) {}

    private static final List<Part> PARTS = List.of(
            new Part("d|days?", "day", "days"),
            new Part("h|hrs?", "hour", "hours"),
            new Part("m|mins?", "minute", "minutes"),
            new Part("s|secs?", "second", "seconds"),
            new Part("ft\\.?|'", "foot", "feet"),
            new Part("in\\.?|\"|''", "inch", "inches"),
            new Part("st", "stone", "stone"),
            new Part("lbs?\\.?", "pound", "pounds"),
            new Part("oz\\.?", "ounce", "ounces"));

    /** The smaller unit that may stand behind a unit. */
    private static final Map<String, String> BEHIND = Map.of(
            "day", "hour", "hour", "minute", "minute", "second", "foot", "inch", "stone", "pound", "pound", "ounce");

    /** Parts of the larger unit, by how many of the smaller one they are. */
    private static final Map<String, String> PARTS_OF_SIXTY =
            Map.of("15", "a quarter", "20", "a third", "30", "a half", "45", "three quarters");

    private static final Pattern COUNT =
            Pattern.compile("(\\d{1,3}(?:\\s?[\u00bc-\u00be\u215b-\u215e]|\\s\\d{1,2}/\\d{1,2})?)\\s?");
    private static final Pattern NEXT = Pattern.compile(",?\\s?(?=\\d)");

    /** A place on a railway: "12m 40ch". */
    private static final Pattern MILES = Pattern.compile("(\\d{1,4})\\s?mi?\\s(\\d{1,2})\\s?ch" + END);

    private static final Pattern CLOCK = Pattern.compile("(\\d{1,2}):([0-5]\\d):([0-5]\\d)" + END);

    private static final List<Pattern> SYMBOLS = PARTS.stream()
            .map(part -> Pattern.compile("(?:" + part.symbols + ")(?![A-Za-z])"))
            .toList();

    private final NumberWords numbers;
    private final Fractions fractions;

    CompositeRule(NumberWords numbers, Fractions fractions) {
        this.numbers = numbers;
        this.fractions = fractions;
    }

    /** A count with its unit. */
    private record Measured(int end, String count, Part part) {}

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher clock = NormalizationRule.match(CLOCK, text, from, to);
        if (clock != null) {
            return new SpokenSpan(clock.end(), clock(clock));
        }
        Matcher miles = NormalizationRule.match(MILES, text, from, to);
        if (miles != null) {
            return new SpokenSpan(
                    miles.end(),
                    numbers.count(miles.group(1), "mile").then("", "and").then(numbers.count(miles.group(2), "chain")));
        }
        Measured first = measured(text, from, to, null);
        Measured second = first == null ? null : next(text, first, to);
        if (first == null || second == null) {
            return null;
        }
        SpokenForms rest = named(second).or(bare(second));
        Measured third = next(text, second, to);
        if (third != null) {
            SpokenForms last = named(third).or(bare(third));
            rest = named(second).then("", "and").then(last);
        }
        int end = third == null ? second.end : third.end;
        if (!NormalizationRule.endsAt(text, end)) {
            return null;
        }
        SpokenForms whole = named(first);
        SpokenForms forms = whole.preferred()
                .then("", "and")
                .then(rest)
                .or(whole.then("", "and").then(rest));
        forms = third == null ? forms.besides(oneAfterTheOther(first, second)) : forms;
        return new SpokenSpan(end, forms);
    }

    /** What is said before a noun, "two pound three ounce", or of parts of an hour, "two and a half hours". */
    private SpokenForms oneAfterTheOther(Measured first, Measured second) {
        boolean sixty = first.part.one.equals("hour") || first.part.one.equals("minute");
        SpokenForms forms = sixty || first.part.one.equals("day")
                ? SpokenForms.NONE
                : bare(first).then(first.part.one).then(bare(second)).then(second.part.one, "");
        if (first.part.one.equals("foot")) {
            forms = forms.or(bare(first).then("feet").then(bare(second)).then(second.part.one))
                    .or(bare(first).then(bare(second)));
        }
        String part = PARTS_OF_SIXTY.get(second.count);
        if (part == null || !sixty) {
            return forms;
        }
        forms = forms.or(bare(first).then("and " + part).then(first.part.many));
        return first.count.equals("1")
                ? forms.or(Units.article(first.part.one) + " " + first.part.one + " and " + part)
                : forms;
    }

    private static @Nullable Measured next(String text, Measured before, int to) {
        Matcher gap = NormalizationRule.match(NEXT, text, before.end, to);
        String one = BEHIND.get(before.part.one);
        return gap == null || one == null ? null : measured(text, gap.end(), to, one);
    }

    /** A count with its unit; any unit if {@code wanted} is null. */
    private static @Nullable Measured measured(String text, int from, int to, @Nullable String wanted) {
        Matcher count = NormalizationRule.match(COUNT, text, from, to);
        for (int i = 0; count != null && i < PARTS.size(); i++) {
            Part part = PARTS.get(i);
            Matcher symbol = wanted == null || wanted.equals(part.one)
                    ? NormalizationRule.match(SYMBOLS.get(i), text, count.end(), to)
                    : null;
            if (symbol != null) {
                return new Measured(symbol.end(), count.group(1), part);
            }
        }
        return null;
    }

    private SpokenForms bare(Measured measured) {
        SpokenSpan mixed =
                measured.count.matches("\\d+") ? null : fractions.at(measured.count, 0, measured.count.length());
        return mixed == null
                ? numbers.counted(measured.count).preferred()
                : mixed.forms().first(2);
    }

    private SpokenForms named(Measured measured) {
        Part part = measured.part;
        boolean one = measured.count.equals("1");
        SpokenForms forms = bare(measured).then(one ? part.one : part.many);
        if (one) {
            forms = forms.or(Units.article(part.one) + " " + part.one);
        }
        return part.one.equals("foot") && !one ? bare(measured).then("foot", "feet") : forms;
    }

    private SpokenForms clock(Matcher m) {
        SpokenForms named = numbers.count(m.group(1), "hour").then(numbers.count(m.group(2), "minute"));
        SpokenForms seconds = numbers.count(m.group(3), "second");
        SpokenForms rest = two(m.group(2)).then(two(m.group(3)));
        SpokenForms hour = numbers.cardinal(Integer.parseInt(m.group(1))).preferred();
        SpokenForms bare = two(m.group(1)).then(rest).or(hour.then(rest));
        return named.then("and", "").then(seconds).or(bare);
    }

    private SpokenForms two(String digits) {
        int n = Integer.parseInt(digits);
        SpokenForms said = numbers.cardinal(n).preferred();
        return n < 10 && digits.length() == 2 ? SpokenForms.of("oh", "zero").then(said) : said;
    }
}
