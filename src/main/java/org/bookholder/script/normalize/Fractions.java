package org.bookholder.script.normalize;

import java.text.Normalizer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Fractions and mixed numbers: "1/2", "¾", "4 1/2", "2½". */
final class Fractions {
    private static final String VULGAR = "[\\u00bc-\\u00be\\u2150-\\u215e]";
    private static final Pattern MIXED = Pattern.compile("(\\d{1,9})(?:\\s|-)(\\d{1,2})/(\\d{1,3})(?![\\d/])");
    private static final Pattern MIXED_VULGAR = Pattern.compile("(\\d{1,9})?\\s?(" + VULGAR + ")");
    private static final Pattern PLAIN = Pattern.compile("(\\d{1,2})/(\\d{1,3})(?![\\d/.,]\\d|\\d|/)");

    private final NumberWords numbers;

    Fractions(NumberWords numbers) {
        this.numbers = numbers;
    }

    /** Reads a fraction, whatever follows it; returns null if there is none. */
    @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher m = NormalizationRule.match(MIXED, text, from, to);
        if (m != null && isProper(m.group(2), m.group(3))) {
            return new SpokenSpan(m.end(), mixed(m.group(1), m.group(2), m.group(3)));
        }
        m = NormalizationRule.match(MIXED_VULGAR, text, from, to);
        if (m != null) {
            String[] parts =
                    Normalizer.normalize(m.group(2), Normalizer.Form.NFKC).split("\u2044", -1);
            if (parts.length == 2) {
                SpokenForms forms =
                        m.group(1) == null ? proper(parts[0], parts[1]) : mixed(m.group(1), parts[0], parts[1]);
                return new SpokenSpan(m.end(), forms);
            }
        }
        m = NormalizationRule.match(PLAIN, text, from, to);
        return m == null || Integer.parseInt(m.group(2)) == 0
                ? null
                : new SpokenSpan(m.end(), plain(m.group(1), m.group(2)));
    }

    private static boolean isProper(String numerator, String denominator) {
        return Integer.parseInt(numerator) < Integer.parseInt(denominator);
    }

    private SpokenForms mixed(String whole, String numerator, String denominator) {
        SpokenForms head = numbers.counted(whole).preferred();
        SpokenForms part = part(denominator, false);
        SpokenForms tail = numerator.equals("1")
                ? SpokenForms.of(NumberWords.article(part), "one").then(part)
                : proper(numerator, denominator);
        return head.then("and").then(tail).or(head.then(tail.preferred()));
    }

    private SpokenForms plain(String numerator, String denominator) {
        SpokenForms side = numbers.counted(numerator).preferred();
        SpokenForms pair = side.then(numbers.counted(denominator).preferred());
        SpokenForms over = side.then("over", "out of", "slash", denominator.equals("1") ? "to" : "over")
                .then(numbers.counted(denominator).preferred());
        return isProper(numerator, denominator)
                ? proper(numerator, denominator).or(over).or(pair)
                : pair.or(over).or(proper(numerator, denominator));
    }

    private SpokenForms proper(String numerator, String denominator) {
        if (!numerator.equals("1")) {
            SpokenForms parts = numbers.counted(numerator).preferred().then(part(denominator, true));
            SpokenForms one = numbers.counted(numerator)
                    .preferred()
                    .then(part(denominator, false).preferred());
            return parts.or(parts.preferred().then("of a", "of an", "of")).or(one);
        }
        SpokenForms part = part(denominator, false);
        SpokenForms ones = SpokenForms.of("one", NumberWords.article(part));
        SpokenForms forms = ones.then(part);
        return denominator.equals("2")
                ? forms.or("half a", "half", "half an")
                : forms.or(part)
                        .or(part.then("of a", "of an"))
                        .or(ones.then(part.preferred()).then("of a", "of an"));
    }

    private SpokenForms part(String denominator, boolean many) {
        return switch (denominator) {
            case "2" -> SpokenForms.of(many ? "halves" : "half");
            case "4" -> many ? SpokenForms.of("quarters", "fourths") : SpokenForms.of("quarter", "fourth");
            default -> {
                String ordinal = String.join(
                        " ", numbers.ordinal(Integer.parseInt(denominator)).first());
                String part = many ? ordinal + "s" : ordinal;
                // "Seven hundredths" as well as "seven one hundredths".
                yield part.startsWith("one ") ? SpokenForms.of(part, part.substring(4)) : SpokenForms.of(part);
            }
        };
    }
}
