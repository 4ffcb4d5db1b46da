package org.bookholder.script.normalize;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Amounts of money: "$20.50", "£1.20", "$2.5 million", "€5-10", "50¢". */
final class MoneyRule implements NormalizationRule {
    private record Currency(String one, String many, String minorOne, String minorMany) {}

    private static final Map<String, Currency> CURRENCIES = Map.of(
            "$", new Currency("dollar", "dollars", "cent", "cents"),
            "£", new Currency("pound", "pounds", "penny", "pence"),
            "€", new Currency("euro", "euros", "cent", "cents"),
            "¥", new Currency("yen", "yen", "", ""),
            "₹", new Currency("rupee", "rupees", "paisa", "paise"));

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

    private static final String SIGN = "(?:US|A|C|CA|NZ)?([$£€¥₹])\\s?";
    private static final String MAGNITUDE =
            "(?:(?:\\s?(hundred|thousand|million|billion|trillion)|(k|K|m|M|mn|bn|B))\\b)?";
    private static final Pattern RANGE =
            Pattern.compile(SIGN + "(" + NUMBER + ")" + TO + "[$£€¥₹]?(" + NUMBER + ")" + MAGNITUDE + END);
    private static final Pattern AMOUNT = Pattern.compile(SIGN + "(" + NUMBER + ")" + MAGNITUDE);
    private static final Pattern WHOLE_AMOUNT = Pattern.compile(AMOUNT.pattern() + END);
    private static final Pattern CENTS = Pattern.compile("(" + NUMBER + ")\\s?¢" + END);

    private final NumberWords numbers;

    MoneyRule(NumberWords numbers) {
        this.numbers = numbers;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher range = NormalizationRule.match(RANGE, text, from, to);
        if (range != null) {
            return new SpokenSpan(range.end(), range(range));
        }
        Matcher amount = NormalizationRule.match(WHOLE_AMOUNT, text, from, to);
        if (amount != null) {
            return new SpokenSpan(amount.end(), amount(amount));
        }
        Matcher cents = NormalizationRule.match(CENTS, text, from, to);
        if (cents != null) {
            String number = cents.group(1);
            return new SpokenSpan(
                    cents.end(), numbers.counted(number).then(NumberWords.isOne(number) ? "cent" : "cents"));
        }
        return null;
    }

    /** Reads an amount that may be followed by other characters, as in "$5-a-day". */
    @Nullable SpokenSpan amountAt(String text, int from, int to) {
        Matcher amount = NormalizationRule.match(AMOUNT, text, from, to);
        return amount == null ? null : new SpokenSpan(amount.end(), amount(amount));
    }

    private SpokenForms range(Matcher m) {
        Currency currency = currency(m.group(1));
        SpokenForms low = numbers.counted(m.group(2));
        SpokenForms high = numbers.counted(m.group(3)).then(magnitude(m.group(4), m.group(5)));
        return low.then("to")
                .then(high)
                .then(currency.many)
                .or(low.then(currency.many + " to").then(high).then(currency.many));
    }

    private SpokenForms amount(Matcher m) {
        Currency currency = currency(m.group(1));
        String number = m.group(2);
        if (m.group(3) != null || m.group(4) != null) {
            SpokenForms forms = numbers.counted(number)
                    .then(magnitude(m.group(3), m.group(4)))
                    .then(currency.many);
            return m.group(4) == null || m.group(4).length() > 1
                    ? forms
                    : forms.or(numbers.counted(number).then(Typography.lower(m.group(4))));
        }
        int point = number.indexOf('.');
        if (point < 0 || number.length() - point > 3 || currency.minorMany.isEmpty()) {
            return numbers.counted(number).then(NumberWords.isOne(number) ? currency.one : currency.many);
        }
        return withMinor(currency, number.substring(0, point), (number.substring(point + 1) + "0").substring(0, 2));
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
                .or(major.then("", "and").then(minorNamed));
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
