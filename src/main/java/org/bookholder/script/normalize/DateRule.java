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
    private static final Pattern ISO = Pattern.compile("([12]\\d{3})([-/.])(\\d\\d?)\\2(\\d\\d?)" + END);
    private static final Pattern DOTS = Pattern.compile("(\\d{1,2})([-.])\\s?(\\d{1,2})\\2\\s?([12]\\d{3})" + END);
    private static final Pattern HYPHENS =
            Pattern.compile("(?:" + MONTH + "-" + DAY + "|" + DAY + "-" + MONTH + ")(?:-([12]\\d{3}))?" + END);
    private static final Pattern MONTH_YEAR = Pattern.compile(MONTH + ",?\\s([12]\\d{3})" + END);
    private static final Pattern DAYS = Pattern.compile(MONTH + "\\s" + DAY + TO + DAY + YEAR + END);
    private static final Pattern DAYS_FIRST = Pattern.compile(DAY + TO + DAY + "\\s" + MONTH + YEAR + END);
    private static final Pattern SLASHES = Pattern.compile("(\\d{1,2})/(\\d{1,2})/([12]\\d{3}|\\d\\d)" + END);
    private static final Pattern NO_YEAR = Pattern.compile("(\\d{1,2})/(\\d{1,2})" + END);

    /** A year of two digits that lies further ahead than this is likely to be one of the century before. */
    private static final int EITHER_CENTURY = 2039;

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
        SpokenSpan several = days(text, from, to);
        if (several != null) {
            return several;
        }
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
            SpokenSpan date = heard(m, Integer.parseInt(m.group(3)), m.group(4), m.group(1), false);
            SpokenSpan bare = heard(m, Integer.parseInt(m.group(3)), m.group(4), null, false);
            return date == null || bare == null ? null : new SpokenSpan(date.end(), yearFirst(date, bare, m.group(1)));
        }
        m = NormalizationRule.match(DOTS, text, from, to);
        if (m != null) {
            return dots(m);
        }
        m = NormalizationRule.match(HYPHENS, text, from, to);
        if (m != null) {
            return m.group(1) != null
                    ? heard(m, month(m.group(1)), m.group(2), m.group(5), false)
                    : heard(m, month(m.group(4)), m.group(3), m.group(5), true);
        }
        m = NormalizationRule.match(MONTH_YEAR, text, from, to);
        if (m != null) {
            SpokenForms year = numbers.year(Integer.parseInt(m.group(2)));
            boolean things = NormalizationRule.match(THINGS, text, m.end(), text.length()) != null;
            year = things ? year.besides(numbers.counted(m.group(2)).first(3)) : year;
            return new SpokenSpan(
                    m.end(), SpokenForms.of(MONTHS.get(month(m.group(1)) - 1)).then(year));
        }
        m = NormalizationRule.match(SLASHES, text, from, to);
        if (m != null) {
            SpokenSpan date = slashes(m, String.valueOf(NumberWords.yearOf(m.group(3))));
            return date == null ? null : withFigures(m.group(3).length() > 2 ? date : withShortYear(date, m), m);
        }
        m = NormalizationRule.match(NO_YEAR, text, from, to);
        if (m != null && (m.group(1).startsWith("0") || m.group(2).startsWith("0"))) {
            return withDigits(slashes(m, null), m);
        }
        return null;
    }

    /** "3-5 March 2027", "March 3-5". */
    private @Nullable SpokenSpan days(String text, int from, int to) {
        Matcher m = NormalizationRule.match(DAYS, text, from, to);
        if (m != null) {
            return days(m, month(m.group(1)), m.group(2), m.group(3));
        }
        m = NormalizationRule.match(DAYS_FIRST, text, from, to);
        return m == null ? null : days(m, month(m.group(3)), m.group(1), m.group(2));
    }

    private SpokenSpan days(Matcher m, int month, String first, String last) {
        SpokenForms to = SpokenForms.of("to", "through", "until");
        SpokenForms name = SpokenForms.of(MONTHS.get(month - 1));
        SpokenForms ordinals = numbers.ordinal(Integer.parseInt(first))
                .preferred()
                .then(to)
                .then("", "the")
                .then(numbers.ordinal(Integer.parseInt(last)).preferred());
        SpokenForms cardinals = numbers.cardinal(Integer.parseInt(first))
                .preferred()
                .then(to)
                .then(numbers.cardinal(Integer.parseInt(last)).preferred());
        SpokenForms forms = name.then(ordinals)
                .or(name.then(cardinals))
                .or(SpokenForms.of("the", "")
                        .then(ordinals.first(3))
                        .then("of", "")
                        .then(name))
                .or(name.then("the").then(ordinals.first(4)))
                .or(cardinals.then(name));
        String year = m.group(4);
        return new SpokenSpan(
                m.end(),
                year == null
                        ? forms
                        : forms.first(15)
                                .then(numbers.year(Integer.parseInt(year)).first(2)));
    }

    /** "1.12.2024", "15-01-2020": the day first, as nearly everywhere; where months stand first, they may do so here, too. */
    private @Nullable SpokenSpan dots(Matcher m) {
        SpokenSpan day = heard(m, Integer.parseInt(m.group(3)), m.group(1), m.group(4), true);
        SpokenSpan month = dayFirst ? null : heard(m, Integer.parseInt(m.group(1)), m.group(3), m.group(4), false);
        if (day == null || month == null) {
            return day == null ? month : day;
        }
        SpokenForms digits = numbers.counted(m.group(1))
                .preferred()
                .then(numbers.counted(m.group(3)).preferred())
                .then(numbers.year(Integer.parseInt(m.group(4))).preferred());
        return new SpokenSpan(
                m.end(),
                day.forms()
                        .first(SpokenForms.MOST / 2)
                        .or(month.forms().first(12))
                        .or(digits));
    }

    /** A day and month that may as well be a fraction, such as "9/11"; null if it can be no date. */
    @Nullable SpokenSpan uncertain(String text, int from, int to) {
        Matcher m = NormalizationRule.match(NO_YEAR, text, from, to);
        return m == null || m.group(2).matches("[2348]") ? null : slashes(m, null);
    }

    private @Nullable SpokenSpan slashes(Matcher m, @Nullable String year) {
        int month = Integer.parseInt(m.group(dayFirst ? 2 : 1));
        if (year != null && month > 12) {
            // no month: the date was written in the other order
            return heard(m, Integer.parseInt(m.group(dayFirst ? 1 : 2)), String.valueOf(month), year, !dayFirst);
        }
        return heard(m, month, m.group(dayFirst ? 1 : 2), year, dayFirst);
    }

    /** "11/17/05" with its year as it is written. */
    private SpokenSpan withShortYear(SpokenSpan date, Matcher m) {
        SpokenSpan bare = slashes(m, null);
        if (bare == null) {
            return date;
        }
        SpokenForms years = numbers.written(m.group(3)).first(2);
        int year = NumberWords.yearOf(m.group(3));
        if (year > EITHER_CENTURY) {
            years = numbers.year(year - 100).first(1).or(years);
        }
        return new SpokenSpan(
                date.end(),
                date.forms()
                        .first(SpokenForms.MOST - 14)
                        .or(bare.forms().first(6).then(years)));
    }

    /** "10/15/2026" as "ten fifteen twenty twenty six". */
    private SpokenSpan withFigures(SpokenSpan date, Matcher m) {
        String written = m.group(3);
        SpokenForms short2 =
                numbers.written(written.substring(written.length() - 2)).first(1);
        SpokenForms years = written.length() > 2
                ? numbers.year(Integer.parseInt(written)).preferred().or(short2)
                : short2;
        SpokenForms figures = numbers.cardinal(Integer.parseInt(m.group(1)))
                .preferred()
                .then(numbers.cardinal(Integer.parseInt(m.group(2))).preferred())
                .then(years);
        return new SpokenSpan(date.end(), date.forms().besides(figures));
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
