package org.bookholder.script.normalize;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Numbers on their own: "1,500", "2019", "21st", "the '80s", "#1", "No. 5", "-3", "10k", "555-0123". */
final class NumberRule implements NormalizationRule {
    private static final Pattern PHONE =
            Pattern.compile("(?:\\+?\\d{1,3}[\\s.-])?\\(?\\d{3}\\)?[\\s.-]\\d{3}[.-]\\d{4}(?!\\d)" + END
                    + "|\\d{3}-\\d{4}(?!\\d)" + END + "|0\\d{2,4}(?:(?:[\\s-]\\d{2,4}){2,3}|[\\s-]\\d{5,8})(?!\\d)"
                    + END
                    + "|\\+\\d{1,3}(?:[\\s.-]\\(?\\d{1,5}\\)?){2,5}(?!\\d)" + END);
    /** Two numbers of the emergency services: "911/112". */
    private static final Pattern EMERGENCY =
            Pattern.compile("(?=911|999|\\d{3}/(?:911|999))([19]\\d\\d)/([19]\\d\\d)" + END);

    private static final Pattern TWO_DIGITS = Pattern.compile("^\\W{1,2}([1-9]\\d)\\b");
    private static final Pattern ROUND_GROUP = Pattern.compile("\\b0?[1-9]00\\b");
    private static final Pattern ROUND = Pattern.compile("\\d{2}0-\\d{3}0");
    private static final Pattern NAME_BEFORE = Pattern.compile(
            "(?:\\s\\p{Ll}?\\p{Lu}[\\p{L}\\d]*|(?i:chapter|section|figure|table|exercise|lesson|version|step))\\s$");
    private static final Pattern MARKED = Pattern.compile("#(" + NUMBER + ")" + END);
    private static final Pattern NUMBERED = Pattern.compile("(?:[Nn]os?|[Nn]r|[Nn]um)\\.\\s?(" + NUMBER + ")" + END);
    private static final Pattern NUMBERED_RANGE =
            Pattern.compile("(?:[Nn]os?|[Nn]r)\\.\\s?(" + NUMBER + ")" + TO + "(" + NUMBER + ")" + END);
    private static final Pattern DECADES = Pattern.compile("'?(\\d{1,3}0)'?s" + TO + "'?(\\d{1,3}0)'?s" + END);
    private static final Pattern YEARS = Pattern.compile("([12]\\d{3})(/|" + TO + ")(\\d\\d)" + END + "(?!\\s?=)");
    private static final Pattern QUARTER = Pattern.compile(
            "(?:Q([1-4])(?:(?:\\s|'|\\s')([12]\\d{3}|\\d\\d))?|([1-4])Q\\s?'?([12]\\d{3}|\\d\\d)?)" + END);
    private static final Pattern SHORT_YEAR = Pattern.compile("'(\\d\\d)" + END);
    private static final Pattern SCIENTIFIC =
            Pattern.compile("(\\d{1,3}(?:\\.\\d{1,9})?)[eE]([-+\\u2212]?)(\\d{1,2})" + END);
    private static final Pattern DECADE = Pattern.compile("'?(\\d{1,3}0)'?s\\b");
    private static final Pattern ORDINAL =
            Pattern.compile("(\\d{1,3}(?:,\\d{3}){1,4}|\\d{1,12})(?:st|nd|rd|th|ST|ND|RD|TH)\\b");
    private static final Pattern SHORT = Pattern.compile("(" + NUMBER + ")(k|K|M|bn|B)" + END);
    private static final Pattern ALONE = Pattern.compile("(" + NUMBER + ")" + END);

    private final NumberWords numbers;
    private final ScaleRule scales;

    NumberRule(NumberWords numbers, ScaleRule scales) {
        this.numbers = numbers;
        this.scales = scales;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher m = NormalizationRule.match(MARKED, text, from, to);
        if (m != null) {
            return new SpokenSpan(m.end(), SpokenForms.of("number").then(numbers.written(m.group(1))));
        }
        m = NormalizationRule.match(NUMBERED_RANGE, text, from, to);
        if (m != null) {
            boolean several = m.group().charAt(2) == 's';
            String full = Ranges.inFull(m.group(1), m.group(2));
            return new SpokenSpan(
                    m.end(),
                    SpokenForms.of("numbers", "number")
                            .then(numbers.counted(m.group(1)).first(3))
                            .then("to", "through")
                            .then(numbers.counted(m.group(2))
                                    .first(3)
                                    .or(several ? numbers.counted(full).first(3) : SpokenForms.NONE)));
        }
        m = NormalizationRule.match(NUMBERED, text, from, to);
        if (m != null) {
            return new SpokenSpan(m.end(), SpokenForms.of("number").then(numbers.written(m.group(1))));
        }
        m = NormalizationRule.match(SHORT, text, from, to);
        if (m != null) {
            String letter = m.group(2);
            String word = letter.equalsIgnoreCase("k") ? "thousand" : letter.equals("M") ? "million" : "billion";
            String spelled = letter.length() == 1 ? Typography.lower(letter) : "b n";
            SpokenForms forms = numbers.counted(m.group(1)).then(spelled, word);
            forms = forms.or(scales.scaled(m.group(1), word));
            return new SpokenSpan(
                    m.end(),
                    letter.equals("K")
                            ? forms.or(numbers.counted(m.group(1)).first(4).then("kelvin"))
                            : forms);
        }
        m = NormalizationRule.match(ALONE, text, from, to);
        return m == null
                ? decadeOrOrdinalAt(text, from, to, true)
                : new SpokenSpan(m.end(), alone(m.group(1), text, from));
    }

    /** A number alone; behind a name the point of a version is a dot, too: "Python 3.11". */
    private SpokenForms alone(String number, String text, int from) {
        SpokenForms forms = numbers.written(number).or(numbers.parts(number));
        Matcher measure = NormalizationRule.match(Units.MEASURE, text, from + number.length(), text.length());
        if (number.equals("1") && measure != null) {
            return forms.or(Units.article(measure.group(1)));
        }
        boolean version = number.indexOf('.') > 0
                && NAME_BEFORE
                        .matcher(text.substring(Math.max(0, from - 30), from))
                        .find();
        if (!version) {
            return forms;
        }
        String[] sides = number.split("\\.", -1);
        SpokenForms minor = sides[1].startsWith("0") || sides[1].length() > 2
                ? numbers.digits(sides[1])
                : numbers.counted(sides[1]).preferred();
        return forms.besides(
                numbers.counted(sides[0]).preferred().then("dot", "").then(minor.or(numbers.digits(sides[1]))));
    }

    /** Reads telephone numbers and decades such as "1980s", which other rules would take for a range or for seconds. */
    @Nullable SpokenSpan first(String text, int from, int to) {
        Matcher m = NormalizationRule.match(PHONE, text, from, to);
        if (m != null && !ROUND.matcher(m.group()).matches()) {
            return new SpokenSpan(m.end(), phone(m.group()));
        }
        m = NormalizationRule.match(EMERGENCY, text, from, to);
        if (m != null) {
            return new SpokenSpan(
                    m.end(),
                    emergency(m.group(1)).then("", "or", "slash", "and").then(emergency(m.group(2))));
        }
        m = NormalizationRule.match(DECADES, text, from, to);
        if (m != null) {
            return new SpokenSpan(
                    m.end(),
                    decade(m.group(1))
                            .first(4)
                            .then("to", "through", "and")
                            .then(decade(m.group(2)).first(3)));
        }
        m = NormalizationRule.match(YEARS, text, from, to);
        if (m != null && isSpan(m)) {
            return new SpokenSpan(m.end(), years(m));
        }
        m = NormalizationRule.match(SCIENTIFIC, text, from, to);
        if (m != null) {
            return new SpokenSpan(m.end(), scientific(m));
        }
        m = NormalizationRule.match(QUARTER, text, from, to);
        if (m != null) {
            return quarter(m, text);
        }
        m = NormalizationRule.match(SHORT_YEAR, text, from, to);
        if (m != null) {
            return new SpokenSpan(
                    m.end(), numbers.written(m.group(1)).or(numbers.year(NumberWords.yearOf(m.group(1)))));
        }
        return decadeAt(text, from, to, true);
    }

    /** Whether the second of two years lies behind the first: "1960-80"; with a slash, in the year after: "2011/12". */
    private static boolean isSpan(Matcher m) {
        int first = Integer.parseInt(m.group(1)) % 100;
        int last = Integer.parseInt(m.group(3));
        return m.group(2).equals("/") ? last == (first + 1) % 100 : last > first;
    }

    private SpokenForms years(Matcher m) {
        int first = Integer.parseInt(m.group(1));
        int last = first / 100 * 100 + Integer.parseInt(m.group(3));
        last = last < first ? last + 100 : last;
        SpokenForms between =
                m.group(2).equals("/") ? SpokenForms.of("", "to", "slash") : SpokenForms.of("to", "through", "");
        SpokenForms tail =
                numbers.written(m.group(3)).preferred().or(numbers.year(last).first(2));
        return numbers.year(first).then(between).then(tail);
    }

    /** "Q2", "Q3 2026", "2Q26"; behind "Q3" nobody writes a year before 1900, and "Q3 2000 people" may be either. */
    private SpokenSpan quarter(Matcher m, String text) {
        boolean things = NormalizationRule.match(THINGS, text, m.end(), text.length()) != null;
        String number = m.group(2);
        if (number != null
                && text.charAt(m.start(2) - 1) == ' '
                && !number.matches("19..|20..|" + (things ? "-" : ".."))) {
            return new SpokenSpan(m.end(1), quarter(m, null, false));
        }
        return new SpokenSpan(m.end(), quarter(m, m.group(1) == null ? m.group(4) : number, things));
    }

    private SpokenForms quarter(Matcher m, @Nullable String year, boolean things) {
        String digit = m.group(1) == null ? m.group(3) : m.group(1);
        SpokenForms number = numbers.cardinal(Integer.parseInt(digit)).preferred();
        SpokenForms quarter =
                numbers.ordinal(Integer.parseInt(digit)).preferred().then("quarter");
        SpokenForms letters =
                m.group(1) == null ? number.then("q") : SpokenForms.of("q").then(number);
        SpokenForms forms = letters.or(SpokenForms.of("", "the").then(quarter))
                .or(SpokenForms.of("quarter").then(number));
        if (year == null) {
            return forms;
        }
        SpokenForms full = numbers.year(NumberWords.yearOf(year));
        SpokenForms years =
                year.length() == 2 ? numbers.written(year).preferred().or(full.first(2)) : full;
        SpokenForms dated = forms.first(4).then("", "of").then(years);
        return things ? dated.besides(forms.first(4).then(numbers.counted(year).first(3))) : dated;
    }

    /** "1e6", "2.5e-3"; the number itself where it is a whole one. */
    private SpokenForms scientific(Matcher m) {
        SpokenForms number = numbers.counted(m.group(1)).preferred();
        int exponent = Integer.parseInt(m.group(3));
        boolean less = "-\u2212".contains(m.group(2)) && !m.group(2).isEmpty();
        SpokenForms minus = less ? SpokenForms.of("minus", "negative") : SpokenForms.SILENT;
        SpokenForms cardinal = numbers.cardinal(exponent).preferred();
        SpokenForms power = SpokenForms.of("ten to the")
                .then(
                        less
                                ? minus.then(cardinal)
                                : numbers.ordinal(exponent).preferred().or(cardinal))
                .or(SpokenForms.of("ten to the power of").then(minus).then(cardinal));
        SpokenForms forms = number.then("e")
                .then(minus)
                .then(cardinal)
                .or(number.then("times").then(power));
        if (NumberWords.value(m.group(1)).compareTo(BigDecimal.ONE) == 0) {
            forms = forms.or(power);
        }
        BigDecimal value = NumberWords.value(m.group(1)).movePointRight(exponent);
        boolean whole = !less && exponent < 13 && value.stripTrailingZeros().scale() <= 0;
        return whole ? forms.or(numbers.cardinal(value.longValue())) : forms;
    }

    /** Reads "1980s" or "21st"; if {@code whole} is false, anything may follow. */
    @Nullable SpokenSpan decadeOrOrdinalAt(String text, int from, int to, boolean whole) {
        SpokenSpan decade = decadeAt(text, from, to, whole);
        if (decade != null) {
            return decade;
        }
        Matcher m = NormalizationRule.match(ORDINAL, text, from, to);
        if (m == null || (whole && !NormalizationRule.endsAt(text, m.end()))) {
            return null;
        }
        return new SpokenSpan(m.end(), numbers.ordinal(Long.parseLong(m.group(1).replace(",", ""))));
    }

    private @Nullable SpokenSpan decadeAt(String text, int from, int to, boolean whole) {
        Matcher m = NormalizationRule.match(DECADE, text, from, to);
        return m == null || (whole && !NormalizationRule.endsAt(text, m.end()))
                ? null
                : new SpokenSpan(m.end(), ofCentury(m, decade(m.group(1))));
    }

    /** "'60s" without the century that its apostrophe stands for, or with it. */
    private static SpokenForms ofCentury(Matcher m, SpokenForms decade) {
        boolean shortened = m.group().startsWith("'") && m.group(1).matches("[3-9]0");
        return shortened ? decade.or(SpokenForms.of("nineteen").then(decade.preferred())) : decade;
    }

    private SpokenForms decade(String digits) {
        int n = Integer.parseInt(digits);
        if (digits.equals("00")) {
            return SpokenForms.of("two thousands", "noughties", "aughts", "oh ohs", "zeros", "zero zeros");
        }
        SpokenForms year = n < 1000 ? numbers.cardinal(n).preferred() : numbers.year(n);
        SpokenForms forms = SpokenForms.NONE;
        for (String phrase : year.all().stream().map(f -> String.join(" ", f)).toList()) {
            forms = forms.or(phrase.endsWith("y") ? phrase.substring(0, phrase.length() - 1) + "ies" : phrase + "s");
        }
        if (n < 1000) {
            return forms.or(numbers.cardinal(n).preferred().then("seconds"));
        }
        return n % 100 < 20 ? forms : forms.or(decade(String.valueOf(n % 100)).preferred());
    }

    /** "911": digit by digit, "nine eleven" or in full; "999" as "triple nine", too. */
    private SpokenForms emergency(String number) {
        SpokenForms digits = numbers.digits(number).first(1);
        return (number.matches("(\\d)\\1\\1") ? digits.or(numbers.doubled(number)) : digits)
                .or(numbers.shortened(number))
                .or(numbers.counted(number).preferred());
    }

    private SpokenForms phone(String written) {
        SpokenForms forms = numbers.digits(written.replaceAll("\\D", ""));
        if (ROUND_GROUP.matcher(written).find()) {
            forms = groups(written, "oh", false)
                    .or(groups(written, "zero", false))
                    .or(forms);
        }
        forms = forms.or(groups(written, "oh", true));
        return written.startsWith("+")
                ? SpokenForms.of("plus").then(forms.or(abroad(written))).or(forms)
                : forms;
    }

    /** "+44 20 7946 0018": the code of the country, and other groups of two digits, as one number. */
    private SpokenForms abroad(String written) {
        int code = written.replaceAll("[\\s.(-].*", "").length();
        String country = written.substring(1, code);
        String rest = written.substring(code);
        if (country.length() != 2) {
            return SpokenForms.NONE;
        }
        SpokenForms tail = numbers.digits(rest.replaceAll("\\D", "")).or(groups(rest, "oh", true));
        Matcher pair = TWO_DIGITS.matcher(rest);
        if (pair.find()) {
            String behind = rest.substring(pair.end()).replaceAll("\\D", "");
            tail = tail.or(numbers.counted(pair.group(1)).preferred().then(numbers.digits(behind)));
        }
        return numbers.counted(country).preferred().then(tail);
    }

    /** Digit by digit, but "eight hundred" in "1-800" and, if {@code doubled}, "double five". */
    private SpokenForms groups(String written, String zero, boolean doubled) {
        SpokenForms all = SpokenForms.SILENT;
        for (String group : written.replaceAll("\\D+", " ").strip().split(" ", -1)) {
            SpokenForms digits = doubled ? numbers.doubled(group) : numbers.digits(group);
            String spelled = String.join(" ", digits.first()).replace("oh", zero);
            SpokenForms round = group.startsWith("0") ? SpokenForms.of(zero) : SpokenForms.SILENT;
            all = all.then(
                    !doubled && group.matches("0?[1-9]00")
                            ? round.then(
                                    numbers.cardinal(Integer.parseInt(group)).preferred())
                            : SpokenForms.of(spelled));
        }
        return all;
    }
}
