package org.bookholder.script.normalize;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Calendar dates: "July 25, 2012", "25 July", "25th of July", "2006-08-05", "7/25/2012" (month first, as in the US). */
final class DateRule implements NormalizationRule {
    private static final List<String> MONTHS = List.of(
            "january",
            "february",
            "march",
            "april",
            "may",
            "june",
            "july",
            "august",
            "september",
            "october",
            "november",
            "december");

    /** "may" and "march" in lower case are other words. */
    private static final String MONTH =
            "((?i:jan(?:uary)?|feb(?:ruary)?|apr(?:il)?|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?"
                    + "|nov(?:ember)?|dec(?:ember)?)|Mar(?:ch)?|MAR(?:CH)?|May|MAY)\\b\\.?";

    private static final String DAY = "(\\d{1,2})(?:st|nd|rd|th)?(?![\\d:.]\\d|\\d|%)";
    private static final String YEAR = "(?:,?\\s([12]\\d{3})\\b)?";
    private static final Pattern MONTH_FIRST = Pattern.compile(MONTH + "\\s(?:the\\s)?" + DAY + YEAR + END);
    private static final Pattern DAY_FIRST =
            Pattern.compile("(?:the\\s)?" + DAY + "(?:\\sof)?\\s" + MONTH + YEAR + END);
    private static final Pattern ISO = Pattern.compile("([12]\\d{3})-(\\d\\d)-(\\d\\d)" + END);
    private static final Pattern SLASHES = Pattern.compile("(\\d{1,2})/(\\d{1,2})/([12]\\d{3})" + END);

    private final NumberWords numbers;

    DateRule(NumberWords numbers) {
        this.numbers = numbers;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher m = NormalizationRule.match(MONTH_FIRST, text, from, to);
        if (m != null) {
            return heard(m, month(m.group(1)), m.group(2), m.group(3), false);
        }
        m = NormalizationRule.match(DAY_FIRST, text, from, to);
        if (m != null) {
            return heard(m, month(m.group(2)), m.group(1), m.group(3), true);
        }
        m = NormalizationRule.match(ISO, text, from, to);
        if (m != null) {
            return heard(m, Integer.parseInt(m.group(2)), m.group(3), m.group(1), false);
        }
        m = NormalizationRule.match(SLASHES, text, from, to);
        return m == null ? null : heard(m, Integer.parseInt(m.group(1)), m.group(2), m.group(3), false);
    }

    private @Nullable SpokenSpan heard(
            Matcher m, int month, String dayDigits, @Nullable String year, boolean dayFirst) {
        int day = Integer.parseInt(dayDigits);
        if (month < 1 || month > 12 || day < 1 || day > 31) {
            return null;
        }
        String name = MONTHS.get(month - 1);
        SpokenForms ordinal = numbers.ordinal(day).preferred();
        SpokenForms cardinal = numbers.cardinal(day).preferred();
        SpokenForms monthFirst = SpokenForms.of(name)
                .then(ordinal)
                .or(SpokenForms.of(name).then(cardinal))
                .or(SpokenForms.of(name + " the").then(ordinal));
        SpokenForms ofMonth = ordinal.then("of " + name);
        SpokenForms forms = dayFirst
                ? SpokenForms.of("the")
                        .then(ofMonth)
                        .or(ofMonth)
                        .or(cardinal.then(name))
                        .or(ordinal.then(name))
                        .or(monthFirst)
                : monthFirst.or(SpokenForms.of("the").then(ofMonth)).or(cardinal.then(name));
        return new SpokenSpan(m.end(), year == null ? forms : forms.then(numbers.year(Integer.parseInt(year))));
    }

    private static int month(String name) {
        String start = name.toLowerCase(Locale.ROOT).substring(0, 3);
        for (int i = 0; i < MONTHS.size(); i++) {
            if (MONTHS.get(i).startsWith(start)) {
                return i + 1;
            }
        }
        return 0;
    }
}
