package org.bookholder.script.normalize;

import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Amounts of money: "$20.50", "£1.20", "$2.5 million", "€5-10", "50¢". */
final class MoneyRule implements NormalizationRule {
    private static final Map<String, String> MAGNITUDES = Map.of(
            "k",
            "thousand",
            "K",
            "thousand",
            "m",
            "million",
            "M",
            "million",
            "mn",
            "million",
            "bn",
            "billion",
            "b",
            "billion",
            "B",
            "billion");

    private static final Pattern CODE = Pattern.compile("\\s(USD|AUD|CAD|NZD|GBP|EUR|JPY|HKD|SGD)" + END);
    private static final String SIGN = Currencies.SIGN + "\\s?";
    private static final Pattern BEHIND = Pattern.compile("(" + NUMBER + ")\\s?" + Currencies.BEHIND + END);

    /** Behind an amount before a noun, the currency is said in the singular: "a $20 bill". */
    private static final Pattern NOUN = Pattern.compile(
            "(?:\\s|-\\p{L}{1,9}-)(?!(?:and|or|to|for|a|an|the|in|on|at|per|"
                    + "each|by|with|of|off|from|is|was|are|if|but|than|then|when|today|now|more|less|here|there|last|this|every)\\b)\\p{Ll}");

    private static final String MAGNITUDE =
            "(?:(?:\\s?(hundred|thousand|million|billion|trillion)|(k|K|m|M|mn|bn|b|B))\\b)?";
    private static final Pattern RANGE = Pattern.compile(
            SIGN + "(" + NUMBER + ")(?:" + TO + "[$£€¥₹]?|\\sto\\s[$£€¥₹])(" + NUMBER + ")" + MAGNITUDE + END);
    private static final Pattern SCALED_RANGE = Pattern.compile(SIGN + "(" + NUMBER + ")(k|K|m|M|mn|bn|b|B)" + TO
            + Currencies.SIGN.replaceAll("\\((?!\\?)", "(?:") + "?\\s?(" + NUMBER + ")\\5" + END);
    private static final Pattern AMOUNT = Pattern.compile(SIGN + "(" + NUMBER + ")" + MAGNITUDE);
    private static final Pattern WHOLE_AMOUNT = Pattern.compile(AMOUNT.pattern() + END);
    private static final Pattern CENTS = Pattern.compile("(" + NUMBER + ")(?:\\s?¢|c)" + END + "|(\\d{1,2})p" + END);

    private static final Pattern PER_UNIT = Pattern.compile("\\s?/\\s?" + Units.COMPOUND + END);

    private final NumberWords numbers;
    private final ScaleRule scales;

    MoneyRule(NumberWords numbers, ScaleRule scales) {
        this.numbers = numbers;
        this.scales = scales;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher range = NormalizationRule.match(RANGE, text, from, to);
        if (range != null) {
            return new SpokenSpan(range.end(), range(range, beforeNoun(text, range.end())));
        }
        Matcher scaled = NormalizationRule.match(SCALED_RANGE, text, from, to);
        if (scaled != null) {
            return new SpokenSpan(scaled.end(), scaledRange(scaled));
        }
        Matcher amount = NormalizationRule.match(WHOLE_AMOUNT, text, from, to);
        if (amount != null) {
            return withCode(amount, text, to);
        }
        SpokenSpan rate = rateAt(text, from, to);
        if (rate != null) {
            return rate;
        }
        Matcher behind = NormalizationRule.match(BEHIND, text, from, to);
        if (behind != null) {
            boolean noun = beforeNoun(text, behind.end());
            return new SpokenSpan(behind.end(), whole(Currencies.of(null, behind.group(2)), behind.group(1), noun));
        }
        Matcher cents = NormalizationRule.match(CENTS, text, from, to);
        if (cents != null && cents.group(2) != null) {
            SpokenForms number = numbers.counted(cents.group(2)).preferred();
            return new SpokenSpan(cents.end(), number.then("p", NumberWords.isOne(cents.group(2)) ? "penny" : "pence"));
        }
        if (cents != null) {
            String number = cents.group(1);
            SpokenForms named = numbers.counted(number).then(NumberWords.isOne(number) ? "cent" : "cents");
            boolean letter = text.charAt(cents.end() - 1) == 'c';
            return new SpokenSpan(
                    cents.end(),
                    letter ? numbers.counted(number).first(2).then("c").or(named) : named);
        }
        return null;
    }

    /** "$5.00 USD". */
    private SpokenSpan withCode(Matcher amount, String text, int to) {
        Matcher code = NormalizationRule.match(CODE, text, amount.end(), to);
        if (code == null) {
            return new SpokenSpan(amount.end(), amount(amount, beforeNoun(text, amount.end())));
        }
        SpokenForms forms = amount(amount, false);
        SpokenForms behind =
                SpokenForms.of(LetterForms.spell(code.group(1)), code.group(1).equals("USD") ? "u s" : "");
        SpokenForms named = amount.group(5) == null && amount.group(6) == null
                ? exact(Currencies.of(null, code.group(1)), amount.group(4), false)
                : SpokenForms.NONE;
        return new SpokenSpan(code.end(), forms.first(8).then(behind).besides(named));
    }

    /** Reads an amount that may be followed by other characters, as in "$5-a-day". */
    @Nullable SpokenSpan amountAt(String text, int from, int to) {
        Matcher amount = NormalizationRule.match(AMOUNT, text, from, to);
        return amount == null ? null : new SpokenSpan(amount.end(), amount(amount, beforeNoun(text, amount.end())));
    }

    /** "$0.67/mi", "\u00a31,200/m\u00b2": so much for one of them. */
    private @Nullable SpokenSpan rateAt(String text, int from, int to) {
        Matcher amount = NormalizationRule.match(AMOUNT, text, from, to);
        Matcher unit = amount == null ? null : NormalizationRule.match(PER_UNIT, text, amount.end(), to);
        if (amount == null || unit == null) {
            return null;
        }
        SpokenForms one = Units.compound(unit, 1, true);
        String article = Units.article(String.join(" ", one.first()));
        SpokenForms forms = amount(amount, false);
        if (amount.group(4).matches("0?\\.\\d\\d")) {
            forms = forms.or(numbers.counted(amount.group(4))
                    .first(2)
                    .then(currency(amount).many().first(1)));
        }
        return new SpokenSpan(unit.end(), forms.first(6).then("per", article).then(singular(one, unit)));
    }

    /** The unit's names without those of several. */
    private static SpokenForms singular(SpokenForms one, Matcher unit) {
        List<String> several = Units.compound(unit, 1, false).first();
        return new SpokenForms(one.all().stream()
                .filter(form -> form.equals(one.first()) || (!form.equals(several) && !isPlural(form, one)))
                .limit(3)
                .toList());
    }

    private static boolean isPlural(List<String> form, SpokenForms names) {
        String name = String.join(" ", form);
        return names.all().stream().anyMatch(other -> name.equals(String.join(" ", other) + "s"));
    }

    private static boolean beforeNoun(String text, int end) {
        return NormalizationRule.match(NOUN, text, end, text.length()) != null;
    }

    private static Currencies.Said currency(Matcher m) {
        return m.group(2) == null ? Currencies.of(null, m.group(3)) : Currencies.of(m.group(1), m.group(2));
    }

    private SpokenForms range(Matcher m, boolean noun) {
        Currencies.Said currency = currency(m);
        SpokenForms low = numbers.counted(m.group(4)).first(3);
        SpokenForms high = numbers.counted(m.group(5)).first(3).then(magnitude(m.group(6), m.group(7)));
        if (m.group(6) == null && m.group(7) == null && m.group(4).indexOf('.') >= 0) {
            return exact(currency, m.group(4), noun)
                    .first(5)
                    .then("to", "through", "")
                    .then(exact(currency, m.group(5), noun).first(5));
        }
        SpokenForms plain = low.then("to", "through", "until", "").then(high).first(8);
        SpokenForms named = low.then(currency.many().first(1))
                .then("to")
                .then(high)
                .then(currency.many().first(1));
        SpokenForms forms = plain.then(currency.many()).first(16).or(named.first(10));
        return noun ? forms.first(20).or(low.then("to").then(high).then(currency.one())) : forms;
    }

    private SpokenForms scaledRange(Matcher m) {
        SpokenForms unit = currency(m).many().first(2);
        SpokenForms low = numbers.counted(m.group(4)).preferred();
        SpokenForms high = numbers.counted(m.group(6)).preferred();
        SpokenForms scale = SpokenForms.of(MAGNITUDES.getOrDefault(m.group(5), ""));
        String letter = Typography.lower(m.group(5));
        SpokenForms to = SpokenForms.of("to", "through");
        return low.then("")
                .or(low.then(scale))
                .then(to)
                .then(high)
                .then(scale)
                .then(unit)
                .or(low.then(scale).then(unit).then(to).then(high).then(scale).then(unit))
                .or(low.then(scale).then(to).then(high).then(scale))
                .or(low.then(letter).then(to).then(high).then(letter));
    }

    private SpokenForms amount(Matcher m, boolean noun) {
        Currencies.Said currency = currency(m);
        String number = m.group(4);
        if (m.group(5) != null || m.group(6) != null) {
            SpokenForms scale = magnitude(m.group(5), m.group(6));
            SpokenForms scaled = scales.scaled(number, String.join(" ", scale.first()));
            SpokenForms forms = scaled.then(currency.many());
            forms = noun ? forms.or(scaled.first(4).then(currency.one())) : forms;
            forms = forms.first(SpokenForms.MOST - 4).or(scaled.first(2));
            return m.group(6) == null || m.group(6).length() > 1
                    ? forms
                    : forms.or(numbers.counted(number).first(3).then(Typography.lower(m.group(6))));
        }
        return exact(currency, number, noun);
    }

    /** An amount as far as cents: zeros behind them say nothing. */
    private SpokenForms exact(Currencies.Said currency, String written, boolean noun) {
        String number = written.replaceFirst("(\\.\\d\\d)0+$", "$1");
        int point = number.indexOf('.');
        if (point < 0 || number.length() - point > 3 || currency.minorMany().isEmpty()) {
            return whole(currency, number, noun);
        }
        return withMinor(currency, number.substring(0, point), (number.substring(point + 1) + "0").substring(0, 2));
    }

    private SpokenForms whole(Currencies.Said currency, String number, boolean noun) {
        SpokenForms said = numbers.counted(number);
        SpokenForms unit = NumberWords.isOne(number) ? currency.one() : currency.many();
        SpokenForms forms = noun ? said.then(unit.or(currency.one())) : said.then(unit);
        forms = noun && number.matches("[1-9]\\d{2}")
                ? forms.or(numbers.shortened(number).then(currency.one()))
                : forms;
        if (!currency.slang().isEmpty() && number.matches("[1-9][\\d,]*")) {
            String slang = noun || NumberWords.isOne(number) ? currency.slang() : currency.slangMany();
            forms = forms.besides(said.first(3).then(slang));
        }
        return number.matches("0?\\.50?")
                ? forms.or(SpokenForms.of("half a").then(currency.one().first(1)))
                : forms;
    }

    private SpokenForms withMinor(Currencies.Said currency, String whole, String minor) {
        int small = Integer.parseInt(minor);
        SpokenForms cents = numbers.cardinal(small).preferred();
        SpokenForms minorNamed = cents.then(small == 1 ? currency.minorOne() : currency.minorMany());
        if (whole.isEmpty() || whole.equals("0")) {
            return small == 0 ? numbers.cardinal(0).then(currency.many()) : minorNamed;
        }
        SpokenForms number = numbers.counted(whole);
        SpokenForms major = number.then(NumberWords.isOne(whole) ? currency.one() : currency.many());
        if (small == 0) {
            return major;
        }
        SpokenForms bare = small < 10 ? SpokenForms.of("oh").then(cents) : cents;
        return major.preferred()
                .then(minorNamed)
                .or(major.preferred().then("and").then(minorNamed))
                .or(number.preferred().then(bare))
                .or(number.preferred()
                        .then(NumberWords.isOne(whole) ? currency.one() : currency.many())
                        .then(small < 10 ? cents.or(bare) : cents))
                .or(major.then("", "and").then(minorNamed))
                .or(NumberWords.isOne(whole) ? aOne(currency, cents, minorNamed) : SpokenForms.NONE);
    }

    private static SpokenForms aOne(Currencies.Said currency, SpokenForms cents, SpokenForms minorNamed) {
        SpokenForms one = SpokenForms.of("a").then(currency.one());
        return one.then(cents).or(one.then("and", "").then(minorNamed));
    }

    private static SpokenForms magnitude(@Nullable String word, @Nullable String letter) {
        if (word != null) {
            return SpokenForms.of(word);
        }
        return letter == null ? SpokenForms.SILENT : SpokenForms.of(MAGNITUDES.getOrDefault(letter, ""));
    }
}
