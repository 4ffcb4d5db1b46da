package org.bookholder.script.normalize;

import com.ibm.icu.text.RuleBasedNumberFormat;
import com.ibm.icu.util.ULocale;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * Numbers as English words. The preferred form comes from ICU's spell-out rules (Unicode CLDR), without hyphens; other
 * things that people say follow it: "and", "a hundred", "fifteen hundred", "oh".
 */
public final class NumberWords {
    /** Creating one takes some milliseconds, so there is only one; ICU's formats allow one thread at a time. */
    private static final RuleBasedNumberFormat SPELL =
            new RuleBasedNumberFormat(ULocale.ENGLISH, RuleBasedNumberFormat.SPELLOUT);

    /** A whole number that counts something. */
    public SpokenForms cardinal(long n) {
        String plain = words(n, "%spellout-cardinal");
        String verbose = words(n, "%spellout-cardinal-verbose");
        List<String> forms = new ArrayList<>(List.of(plain, verbose));
        if (plain.startsWith("one ")) {
            forms.add("a" + verbose.substring(3));
            forms.add("a" + plain.substring(3));
        }
        if (n >= 1100 && n < 10000 && n / 100 % 10 != 0) {
            String hundreds = words(n / 100, "%spellout-cardinal") + " hundred";
            if (n % 100 == 0) {
                forms.add(hundreds);
            } else {
                String rest = words(n % 100, "%spellout-cardinal");
                forms.add(hundreds + " " + rest);
                forms.add(hundreds + " and " + rest);
            }
        }
        if (n > 1500 && n < 1_000_000 && n % 1000 == 500) {
            forms.add(words(n / 1000, "%spellout-cardinal") + " and a half thousand");
        }
        if (n == 0) {
            forms.add("oh");
        }
        return SpokenForms.of(forms.toArray(String[]::new));
    }

    /** An ordinal number: "twenty first". */
    public SpokenForms ordinal(long n) {
        SpokenForms forms = SpokenForms.of(words(n, "%spellout-ordinal"), words(n, "%spellout-ordinal-verbose"));
        String plain = String.join(" ", forms.first());
        if (!plain.startsWith("one ")) {
            return forms;
        }
        boolean known = n < 1000 || plain.indexOf(' ') == plain.lastIndexOf(' ');
        forms = forms.or("a" + plain.substring(3));
        return known
                ? forms.or(plain.substring(4))
                        .or(String.join(" ", forms.all().get(1)).replaceFirst("^(?:one|a) ", ""))
                : forms;
    }

    /** A year as written; one of two digits is in the century that POSIX gives it (%y of strptime): 69 to 99 are of the last. */
    static int yearOf(String written) {
        int n = Integer.parseInt(written);
        return written.length() > 2 ? n : n > 68 ? 1900 + n : 2000 + n;
    }

    /** A year, 1 to 9999: "nineteen oh five", "twenty nineteen". */
    public SpokenForms year(int year) {
        SpokenForms forms = SpokenForms.of(words(year, "%spellout-numbering-year"));
        int century = year / 100;
        int rest = year % 100;
        if (year >= 1000 && year < 10000 && rest != 0 && century % 10 != 0) {
            String hundreds = words(century, "%spellout-cardinal") + " hundred ";
            String tail = words(rest, "%spellout-cardinal");
            forms = forms.or(hundreds + "and " + tail, hundreds + tail);
        }
        if (year >= 2000 && year < 2100) {
            forms = forms.or(words(year, "%spellout-cardinal"), words(year, "%spellout-cardinal-verbose"));
        }
        return year >= 1000 && year < 10000 && rest != 0 ? forms.or(pairs(century, rest)) : forms;
    }

    private String pairs(int high, int low) {
        String tail = words(low, "%spellout-cardinal");
        return words(high, "%spellout-cardinal") + (low < 10 ? " oh " : " ") + tail;
    }

    /** A number as written, with or without thousands separators and decimals. */
    public SpokenForms written(String number) {
        int point = number.indexOf('.');
        if (point >= 0) {
            return decimal(number.substring(0, point), number.substring(point + 1));
        }
        String digits = number.replace(",", "");
        if ((digits.length() > 1 && digits.startsWith("0")) || digits.length() > 15) {
            return digits(digits);
        }
        SpokenForms forms = cardinal(Long.parseLong(digits));
        if (number.indexOf(',') >= 0) {
            return forms;
        }
        return switch (digits.length()) {
            case 3 ->
                digits.endsWith("00")
                        ? forms
                        : forms.or(threeDigits(digits)).or(digits(digits)).or(tripled(digits));
            case 4 -> fourDigits(Integer.parseInt(digits), forms);
            default -> digits.length() < 3 ? forms : forms.or(digits(digits));
        };
    }

    /** The same for a number that counts something and cannot be a year. */
    SpokenForms counted(String number) {
        String digits = number.replace(",", "");
        if (number.indexOf('.') >= 0 || (digits.length() > 1 && digits.startsWith("0"))) {
            return written(number);
        }
        long n = Long.parseLong(digits);
        SpokenForms forms = cardinal(n);
        return n < 1000 || n > 9999 || number.indexOf(',') >= 0 ? forms : forms.or(year((int) n));
    }

    private SpokenForms fourDigits(int n, SpokenForms cardinal) {
        SpokenForms year = year(n);
        return n < 2100 ? year.or(cardinal) : cardinal.or(year).or(digits(Integer.toString(n)));
    }

    /** "999" as "triple nine"; none if the digits differ. */
    private SpokenForms tripled(String digits) {
        return digits.matches("(\\d)\\1\\1") ? doubled(digits) : SpokenForms.NONE;
    }

    private String threeDigits(String digits) {
        return pairs(digits.charAt(0) - '0', Integer.parseInt(digits.substring(1)));
    }

    /** A number of three digits as "two fifty", four as "twelve fifty"; any other, also one with a point or commas, in full. */
    SpokenForms shortened(String digits) {
        boolean paired = digits.matches("[1-9]\\d{2,3}") && !digits.endsWith("00");
        return paired
                ? SpokenForms.of(pairs(Integer.parseInt(digits) / 100, Integer.parseInt(digits) % 100))
                : counted(digits).preferred();
    }

    /** The same as an ordinal: "two fiftieth". */
    SpokenForms shortOrdinal(String digits) {
        int n = Integer.parseInt(digits);
        boolean paired = n > 100 && n < 1000 && n % 100 > 9;
        return paired
                ? cardinal(n / 100).preferred().then(ordinal(n % 100).preferred())
                : ordinal(n).preferred();
    }

    private SpokenForms decimal(String whole, String fraction) {
        SpokenForms tail = SpokenForms.of("point").then(digits(fraction, "zero", "oh"));
        if (whole.isEmpty() || whole.equals("0")) {
            SpokenForms head = whole.isEmpty() ? SpokenForms.of("", "zero") : SpokenForms.of("zero", "", "oh");
            SpokenForms nought = SpokenForms.of("nought point").then(digits(fraction, "nought", "oh"));
            return head.then(tail).or(part(fraction, "one", "a", "")).or(nought);
        }
        SpokenForms forms = counted(whole).then(tail);
        if (fraction.length() == 2 && fraction.charAt(0) != '0') {
            SpokenForms pair = cardinal(Integer.parseInt(fraction)).preferred();
            forms = forms.or(counted(whole).preferred().then("point", "").then(pair));
        }
        if (whole.length() == 3) {
            forms = forms.or(shortened(whole).then(tail));
        }
        return whole.length() > 3
                ? forms
                : forms.or(counted(whole).preferred().then("and").then(part(fraction, "a", "one")));
    }

    /** Halves and quarters that are written as decimals. */
    private static SpokenForms part(String fraction, String... ones) {
        return switch (fraction) {
            case "5", "50" -> SpokenForms.of(ones).then("half");
            case "25" -> SpokenForms.of(ones).then("quarter");
            case "75" -> SpokenForms.of("three quarters", "three quarter");
            default -> SpokenForms.NONE;
        };
    }

    /** A decimal below one as a fraction of what follows: "one thousandth of an", "three tenths"; none for other numbers. */
    SpokenForms parts(String number) {
        return tenths(number).then("of an", "of a", "");
    }

    /** A decimal below one as a fraction: "a thousandth", "three tenths"; none for other numbers. */
    SpokenForms tenths(String number) {
        String fraction = number.replaceFirst("^0?\\.", "");
        if (fraction.equals(number)) {
            return SpokenForms.NONE;
        }
        int n = fraction.length() > 3 ? 0 : Integer.parseInt(fraction);
        if (n == 0 || n > 99) {
            return SpokenForms.NONE;
        }
        String part = List.of("tenth", "hundredth", "thousandth").get(fraction.length() - 1);
        SpokenForms count = cardinal(n).preferred();
        return (n == 1 ? count.or("a") : count).then(n == 1 ? part : part + "s");
    }

    /** Digit by digit, preferring "oh" to "zero", as people say telephone and room numbers. */
    SpokenForms digits(String digits) {
        return digits(digits, "oh", "zero");
    }

    private SpokenForms digits(String digits, String zero, String otherZero) {
        StringBuilder said = new StringBuilder();
        for (int i = 0; i < digits.length(); i++) {
            int digit = Character.digit(digits.charAt(i), 10);
            said.append(digit == 0 ? "_" : words(digit, "%spellout-cardinal")).append(' ');
        }
        return SpokenForms.of(
                said.toString().replace("_", zero), said.toString().replace("_", otherZero));
    }

    /** A number with what it counts, which gets an "s" unless it is one: "one minute", "two minutes". */
    SpokenForms count(String digits, String unit) {
        int n = Integer.parseInt(digits);
        return cardinal(n).preferred().then(n == 1 ? unit : unit + "s");
    }

    /** Digits of a telephone number in which equal neighbours are said as "double" or "triple". */
    SpokenForms doubled(String digits) {
        SpokenForms all = SpokenForms.SILENT;
        for (int i = 0; i < digits.length(); ) {
            int end = i + 1;
            while (end < digits.length() && end - i < 3 && digits.charAt(end) == digits.charAt(i)) {
                end++;
            }
            String one = String.join(" ", digits(digits.substring(i, i + 1)).first());
            all = all.then(List.of("", "double ", "triple ").get(end - i - 1) + one);
            i = end;
        }
        return all;
    }

    /** Whether the number is exactly one, so that the noun after it is singular. */
    static boolean isOne(String number) {
        return value(number).compareTo(BigDecimal.ONE) == 0 && number.indexOf('.') < 0;
    }

    /** The article before an ordinal number: "an eighth", "a tenth". Those with a vowel at their beginning begin with an e. */
    static String article(SpokenForms ordinal) {
        return ordinal.first().get(0).startsWith("e") ? "an" : "a";
    }

    /** What a number is worth that is written with or without thousands separators. */
    static BigDecimal value(String number) {
        return new BigDecimal(number.replace(",", ""));
    }

    private String words(long n, String ruleSet) {
        String words;
        synchronized (SPELL) {
            words = SPELL.format(n, ruleSet);
        }
        return words.replace('-', ' ').replace(",", "").replace("\u00ad", "");
    }
}
