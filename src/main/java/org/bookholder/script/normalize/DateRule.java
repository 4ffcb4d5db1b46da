package org.bookholder.script.normalize;

import java.time.Month;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Calendar dates: "July 25, 2012", "25 July", "25th of July", "2006-08-05", "7/25/2012" (month first or day first). */
final class DateRule implements NormalizationRule {
    private static final List<String> MONTHS = Arrays.stream(Month.values())
            .map(month -> month.name().toLowerCase(Locale.ROOT))
            .toList();

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
    private static final Pattern SLASHES = Pattern.compile("(\\d{1,2})/(\\d{1,2})/([12]\\d{3}|\\d\\d)" + END);
    private static final Pattern NO_YEAR = Pattern.compile("(\\d{1,2})/(\\d{1,2})" + END);

    private final NumberWords numbers;
    private final boolean dayFirst;

    /**
     * A rule.
     *
     * @param dayFirst whether 3/9 is the third of September, as outside North America
     */
    DateRule(NumberWords numbers, boolean dayFirst) {
        this.dayFirst = dayFirst;
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
            SpokenSpan date = heard(m, Integer.parseInt(m.group(2)), m.group(3), m.group(1), false);
            SpokenSpan bare = heard(m, Integer.parseInt(m.group(2)), m.group(3), null, false);
            return date == null || bare == null ? null : new SpokenSpan(date.end(), yearFirst(date, bare, m.group(1)));
        }
        m = NormalizationRule.match(SLASHES, text, from, to);
        if (m != null) {
            return slashes(m, fullYear(m.group(3)));
        }
        m = NormalizationRule.match(NO_YEAR, text, from, to);
        if (m != null && (m.group(1).startsWith("0") || m.group(2).startsWith("0"))) {
            return withDigits(slashes(m, null), m);
        }
        return null;
    }

    /** A day and month that may as well be a fraction, such as "9/11"; null if it can be no date. */
    @Nullable SpokenSpan uncertain(String text, int from, int to) {
        Matcher m = NormalizationRule.match(NO_YEAR, text, from, to);
        return m == null || m.group(2).matches("[2348]") ? null : slashes(m, null);
    }

    private @Nullable SpokenSpan slashes(Matcher m, @Nullable String year) {
        int month = Integer.parseInt(m.group(dayFirst ? 2 : 1));
        return heard(m, month, m.group(dayFirst ? 1 : 2), year, dayFirst);
    }

    /** A year of two digits in the century that POSIX gives it (%y of strptime): 69 to 99 are of the last. */
    private static String fullYear(String year) {
        return year.length() > 2 ? year : (Integer.parseInt(year) > 68 ? "19" : "20") + year;
    }

    private @Nullable SpokenSpan withDigits(@Nullable SpokenSpan date, Matcher m) {
        if (date == null) {
            return null;
        }
        SpokenForms digits = numbers.cardinal(Integer.parseInt(m.group(1)))
                .preferred()
                .then(numbers.cardinal(Integer.parseInt(m.group(2))).preferred());
        return new SpokenSpan(date.end(), date.forms().or(digits));
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
        if (year == null) {
            return new SpokenSpan(m.end(), forms);
        }
        SpokenForms years = numbers.year(Integer.parseInt(year));
        return new SpokenSpan(
                m.end(),
                forms.then(years.preferred()).or(forms.first(4).then(years)).or(forms.then(years)));
    }

    private SpokenForms yearFirst(SpokenSpan date, SpokenSpan bare, String year) {
        SpokenForms years = numbers.year(Integer.parseInt(year)).preferred();
        return date.forms()
                .first(SpokenForms.MOST - 2)
                .or(years.then(bare.forms().first(2)));
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
