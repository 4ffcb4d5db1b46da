package org.bookholder.script.normalize;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Amounts of money: "$20.50", "£1.20", "$2.5 million", "€5-10", "50¢". */
final class MoneyRule implements NormalizationRule {
    private record Currency(String one, String many, String minorOne, String minorMany) {}

    private static final Currency DOLLAR = new Currency("dollar", "dollars", "cent", "cents");
    private static final Currency POUND = new Currency("pound", "pounds", "penny", "pence");
    private static final Currency EURO = new Currency("euro", "euros", "cent", "cents");
    private static final Currency YEN = new Currency("yen", "yen", "", "");
    private static final Currency RUPEE = new Currency("rupee", "rupees", "paisa", "paise");

    private static final Map<String, Currency> CURRENCIES = Map.ofEntries(
            Map.entry("$", DOLLAR),
            Map.entry("£", POUND),
            Map.entry("€", EURO),
            Map.entry("¥", YEN),
            Map.entry("₹", RUPEE),
            Map.entry("R$", new Currency("real", "reais", "centavo", "centavos")),
            Map.entry("USD", DOLLAR),
            Map.entry("GBP", POUND),
            Map.entry("EUR", EURO),
            Map.entry("JPY", YEN),
            Map.entry("INR", RUPEE),
            Map.entry("CHF", new Currency("franc", "francs", "centime", "centimes")));

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
            "B",
            "billion");

    private static final String SIGN = "(?:(?:US|A|C|CA|NZ)?([$£€¥₹])|(R\\$|USD|GBP|EUR|JPY|INR|CHF))\\s?";
    private static final Pattern BEHIND = Pattern.compile("(" + NUMBER + ")\\s?(€|£|USD|GBP|EUR|JPY|INR|CHF)" + END);

    /** Behind an amount before a noun, the currency is said in the singular: "a $20 bill". */
    private static final Pattern NOUN = Pattern.compile(
            "(?:\\s|-\\p{L}{1,9}-)(?!(?:and|or|to|for|a|an|the|in|on|at|per|"
                    + "each|by|with|of|off|from|is|was|are|if|but|than|then|when|today|now|more|less|here|there|last|this|every)\\b)\\p{Ll}");

    private static final String MAGNITUDE =
            "(?:(?:\\s?(hundred|thousand|million|billion|trillion)|(k|K|m|M|mn|bn|B))\\b)?";
    private static final Pattern RANGE =
            Pattern.compile(SIGN + "(" + NUMBER + ")" + TO + "[$£€¥₹]?(" + NUMBER + ")" + MAGNITUDE + END);
    private static final Pattern AMOUNT = Pattern.compile(SIGN + "(" + NUMBER + ")" + MAGNITUDE);
    private static final Pattern WHOLE_AMOUNT = Pattern.compile(AMOUNT.pattern() + END);
    private static final Pattern CENTS = Pattern.compile("(" + NUMBER + ")(?:\\s?¢|c)" + END);

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
        Matcher amount = NormalizationRule.match(WHOLE_AMOUNT, text, from, to);
        if (amount != null) {
            return new SpokenSpan(amount.end(), amount(amount, beforeNoun(text, amount.end())));
        }
        Matcher behind = NormalizationRule.match(BEHIND, text, from, to);
        if (behind != null) {
            Currency currency = currency(behind.group(2));
            return new SpokenSpan(behind.end(), whole(currency, behind.group(1), true));
        }
        Matcher cents = NormalizationRule.match(CENTS, text, from, to);
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

    /** Reads an amount that may be followed by other characters, as in "$5-a-day". */
    @Nullable SpokenSpan amountAt(String text, int from, int to) {
        Matcher amount = NormalizationRule.match(AMOUNT, text, from, to);
        return amount == null ? null : new SpokenSpan(amount.end(), amount(amount, beforeNoun(text, amount.end())));
    }

    private static boolean beforeNoun(String text, int end) {
        return NormalizationRule.match(NOUN, text, end, text.length()) != null;
    }

    private static String sign(Matcher m) {
        return m.group(1) == null ? m.group(2) : m.group(1);
    }

    private SpokenForms range(Matcher m, boolean noun) {
        Currency currency = currency(sign(m));
        SpokenForms low = numbers.counted(m.group(3)).first(3);
        SpokenForms high = numbers.counted(m.group(4)).first(3).then(magnitude(m.group(5), m.group(6)));
        SpokenForms plain = low.then("to", "through", "until", "").then(high).first(8);
        SpokenForms forms = plain.then(currency.many)
                .or(low.then(currency.many + " to").then(high).then(currency.many));
        return noun ? forms.or(low.then("to").then(high).then(currency.one)) : forms;
    }

    private SpokenForms amount(Matcher m, boolean noun) {
        Currency currency = currency(sign(m));
        String number = m.group(3);
        if (m.group(4) != null || m.group(5) != null) {
            SpokenForms scale = magnitude(m.group(4), m.group(5));
            SpokenForms scaled = scales.scaled(number, String.join(" ", scale.first()));
            SpokenForms forms = scaled.then(currency.many);
            forms = noun ? forms.or(scaled.first(4).then(currency.one)) : forms;
            forms = forms.first(SpokenForms.MOST - 4).or(scaled.first(2));
            return m.group(5) == null || m.group(5).length() > 1
                    ? forms
                    : forms.or(numbers.counted(number).first(3).then(Typography.lower(m.group(5))));
        }
        int point = number.indexOf('.');
        if (point < 0 || number.length() - point > 3 || currency.minorMany.isEmpty()) {
            return whole(currency, number, noun);
        }
        return withMinor(currency, number.substring(0, point), (number.substring(point + 1) + "0").substring(0, 2));
    }

    private SpokenForms whole(Currency currency, String number, boolean noun) {
        SpokenForms said = numbers.counted(number);
        String unit = NumberWords.isOne(number) ? currency.one : currency.many;
        return noun ? said.then(unit, currency.one) : said.then(unit);
    }

    private SpokenForms withMinor(Currency currency, String whole, String minor) {
        int small = Integer.parseInt(minor);
        SpokenForms cents = numbers.cardinal(small).preferred();
        SpokenForms minorNamed = cents.then(small == 1 ? currency.minorOne : currency.minorMany);
        if (whole.isEmpty() || whole.equals("0")) {
            return small == 0 ? numbers.cardinal(0).then(currency.many) : minorNamed;
        }
        SpokenForms number = numbers.counted(whole);
        SpokenForms major = number.then(NumberWords.isOne(whole) ? currency.one : currency.many);
        if (small == 0) {
            return major;
        }
        SpokenForms bare = small < 10 ? SpokenForms.of("oh").then(cents) : cents;
        return major.preferred()
                .then(minorNamed)
                .or(major.preferred().then("and").then(minorNamed))
                .or(number.preferred().then(bare))
                .or(major.preferred().then(cents))
                .or(major.then("", "and").then(minorNamed))
                .or(NumberWords.isOne(whole) ? aOne(currency, cents, minorNamed) : SpokenForms.NONE);
    }

    private static SpokenForms aOne(Currency currency, SpokenForms cents, SpokenForms minorNamed) {
        SpokenForms one = SpokenForms.of("a " + currency.one);
        return one.then(cents).or(one.then("and", "").then(minorNamed));
    }

    private static SpokenForms magnitude(@Nullable String word, @Nullable String letter) {
        if (word != null) {
            return SpokenForms.of(word);
        }
        return letter == null ? SpokenForms.SILENT : SpokenForms.of(MAGNITUDES.getOrDefault(letter, ""));
    }

    private static Currency currency(String sign) {
        Currency currency = CURRENCIES.get(sign);
        if (currency == null) {
            throw new IllegalArgumentException("sign (" + sign + ") must be a known currency");
        }
        return currency;
    }
}
