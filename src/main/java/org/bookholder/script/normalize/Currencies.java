package org.bookholder.script.normalize;

import com.ibm.icu.util.Currency;
import com.ibm.icu.util.ULocale;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Signs and codes of currencies and how they are said. */
final class Currencies {
    /**
     * How a currency is said.
     *
     * @param one one of it, in other words too
     * @param many several
     * @param minorOne a hundredth; empty if there is none
     * @param minorMany several
     */
    record Said(SpokenForms one, SpokenForms many, String minorOne, String minorMany) {
        Said(String one, String many, String minorOne, String minorMany) {
            this(SpokenForms.of(one), SpokenForms.of(many), minorOne, minorMany);
        }

        /** What people also call it; empty if nothing is common. Common practice. */
        String slang() {
            return switch (String.join(" ", one.first())) {
                case "dollar" -> "buck";
                case "pound" -> "quid";
                default -> "";
            };
        }

        /** The same for several. */
        String slangMany() {
            return slang().equals("buck") ? "bucks" : slang();
        }

        /** The same of one country: "Australian dollars". */
        Said of(String country) {
            return new Said(
                    SpokenForms.of(country).then(one).or(one),
                    SpokenForms.of(country).then(many).or(many),
                    minorOne,
                    minorMany);
        }
    }

    private static final Said DOLLAR = new Said("dollar", "dollars", "cent", "cents");

    private static final Map<String, Said> SIGNS = Map.ofEntries(
            Map.entry("$", DOLLAR),
            Map.entry("£", new Said("pound", "pounds", "penny", "pence")),
            Map.entry("€", new Said(SpokenForms.of("euro"), SpokenForms.of("euros", "euro"), "cent", "cents")),
            Map.entry("¥", new Said(SpokenForms.of("yen"), SpokenForms.of("yen", "yuan"), "", "")),
            Map.entry("₹", new Said("rupee", "rupees", "paisa", "paise")),
            Map.entry("₩", new Said("won", "won", "", "")),
            Map.entry("₽", new Said("ruble", "rubles", "kopeck", "kopecks")),
            Map.entry("₺", new Said("lira", "lira", "kurus", "kurus")),
            Map.entry("₱", new Said("peso", "pesos", "centavo", "centavos")),
            Map.entry("₪", new Said("shekel", "shekels", "agora", "agorot")),
            Map.entry("₫", new Said("dong", "dong", "", "")),
            Map.entry("₿", new Said("bitcoin", "bitcoins", "", "")),
            Map.entry("R$", new Said("real", "reais", "centavo", "centavos")),
            Map.entry(
                    "BTC",
                    new Said(SpokenForms.of("bitcoin"), SpokenForms.of("bitcoins", "bitcoin", "b t c"), "", "")));

    /** What stands before the sign of a dollar; common practice. */
    private static final Map<String, String> COUNTRIES = Map.ofEntries(
            Map.entry("US", "u s"),
            Map.entry("A", "australian"),
            Map.entry("AU", "australian"),
            Map.entry("C", "canadian"),
            Map.entry("CA", "canadian"),
            Map.entry("CAN", "canadian"),
            Map.entry("NZ", "new zealand"),
            Map.entry("HK", "hong kong"),
            Map.entry("S", "singapore"),
            Map.entry("MX", "mexican"));

    /** Codes by ISO 4217, as far as they are no words; their names are those of Unicode CLDR, as ICU has them. */
    private static final String CODES =
            "USD|GBP|EUR|JPY|INR|CHF|AUD|CAD|NZD|CNY|SEK|NOK|DKK|ISK|PLN|CZK|HUF|RON|BGN|UAH|ILS|AED|SAR|ZAR|KES|NGN|EGP"
                    + "|BRL|MXN|ARS|CLP|COP|KRW|SGD|HKD|TWD|THB|IDR|MYR|PHP|VND|PKR|BDT|BTC";

    /** Part of a pattern: a sign with its country as two groups, or a code as a third one, perhaps with a sign before it ("$AUD"). */
    static final String SIGN = "(?:(US|AU?|CAN?|C|NZ|HK|S|MX)?([$£€¥₹₩₽₺₱₪₫₿])|\\$?(R\\$|" + CODES + "))";

    /** Part of a pattern: the same behind a number, as one group. */
    static final String BEHIND = "([€£₽₺₪₫₿₩]|" + CODES + ")";

    private static final Map<String, Said> NAMED = Arrays.stream(CODES.split("\\|", -1))
            .filter(code -> !SIGNS.containsKey(code))
            .collect(Collectors.toUnmodifiableMap(code -> code, Currencies::named));

    private Currencies() {}

    /** The currency with a sign or code, perhaps of one country's. */
    static Said of(@Nullable String country, String sign) {
        Said known = SIGNS.containsKey(sign) ? SIGNS.get(sign) : NAMED.get(sign);
        if (known == null) {
            throw new IllegalArgumentException("sign (" + sign + ") must be a known currency");
        }
        String adjective = country == null ? null : COUNTRIES.get(country);
        return adjective == null ? known : known.of(adjective);
    }

    private static Said named(String code) {
        Currency currency = Currency.getInstance(code);
        String one = name(currency, "one");
        String many = name(currency, "other");
        Said plain = switch (last(one)) {
            case "dollar" -> DOLLAR;
            case "pound" -> code.equals("GBP") ? of(null, "£") : new Said("pound", "pounds", "", "");
            case "euro" -> of(null, "€");
            case "rupee" -> of(null, "₹");
            default -> {
                String minor = code.equals("CHF") ? "centime" : "cent";
                yield new Said(last(one), last(many), minor, minor + "s");
            }
        };
        Said bare = currency.getDefaultFractionDigits() == 0 ? new Said(plain.one, plain.many, "", "") : plain;
        return new Said(
                bare.one.or(one), bare.many.or(many).or(LetterForms.spell(code)), bare.minorOne, bare.minorMany);
    }

    private static String name(Currency currency, String count) {
        String name = currency.getName(ULocale.ENGLISH, Currency.PLURAL_LONG_NAME, count, null);
        return Typography.withoutMarks(Typography.lower(name)).replaceAll("^us ", "u s ");
    }

    private static String last(String name) {
        return name.substring(name.lastIndexOf(' ') + 1);
    }
}
