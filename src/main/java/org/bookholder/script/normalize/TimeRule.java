package org.bookholder.script.normalize;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Times of day and lengths with colons: "5 pm", "1:59 p.m.", "23:00", "2pm-5pm", "1:01:01", and ratios "16:9". */
final class TimeRule implements NormalizationRule {
    private static final String HALF = "([AaPp])\\.?[Mm]\\b\\.?";
    private static final String HOUR = "(\\d{1,2})(?::(\\d\\d))?";
    private static final Pattern RANGE =
            Pattern.compile(HOUR + "(?:\\s?" + HALF + ")?(?:" + TO + "|\\sto\\s)" + HOUR + "\\s?" + HALF + END);
    private static final Pattern CLOCK_RANGE =
            Pattern.compile("(\\d{1,2}):(\\d\\d)" + TO + "(\\d{1,2}):(\\d\\d)" + END);
    private static final Pattern HALF_DAY = Pattern.compile(HOUR + "\\s?" + HALF + END);
    private static final Pattern CLOCK = Pattern.compile("(\\d{1,2}):([0-5]\\d)" + END);
    private static final Pattern LENGTH = Pattern.compile("(\\d{1,2}):([0-5]\\d):([0-5]\\d)" + END);
    private static final Pattern HOURS = Pattern.compile("(\\d{1,2})\\s?hr?s?\\s?([0-5]?\\d)\\s?m(?:ins?)?" + END);
    private static final Pattern RATIO = Pattern.compile("(\\d{1,4}):(\\d{1,4})" + END);

    private final NumberWords numbers;

    TimeRule(NumberWords numbers) {
        this.numbers = numbers;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher m = NormalizationRule.match(RANGE, text, from, to);
        if (m != null) {
            SpokenForms start = clock(m.group(1), m.group(2), false).then(half(m.group(3)));
            SpokenForms end = clock(m.group(4), m.group(5), false).then(half(m.group(6)));
            return new SpokenSpan(m.end(), start.then("to", "until").then(end));
        }
        m = NormalizationRule.match(CLOCK_RANGE, text, from, to);
        if (m != null) {
            SpokenForms start = clock(m.group(1), m.group(2), true);
            return new SpokenSpan(m.end(), start.then("to", "until").then(clock(m.group(3), m.group(4), true)));
        }
        m = NormalizationRule.match(HALF_DAY, text, from, to);
        if (m != null) {
            SpokenForms bare = clock(m.group(1), m.group(2), false);
            SpokenForms inTheDay = m.group(3).equalsIgnoreCase("a")
                    ? SpokenForms.of("in the morning")
                    : SpokenForms.of("in the afternoon", "in the evening");
            SpokenForms forms = bare.then(half(m.group(3))).or(bare.preferred().then(inTheDay));
            return new SpokenSpan(m.end(), forms);
        }
        return withoutHalf(text, from, to);
    }

    private @Nullable SpokenSpan withoutHalf(String text, int from, int to) {
        Matcher m = NormalizationRule.match(HOURS, text, from, to);
        if (m != null) {
            return new SpokenSpan(m.end(), hours(m.group(1), m.group(2)));
        }
        m = NormalizationRule.match(LENGTH, text, from, to);
        if (m != null) {
            SpokenForms named = count(m.group(1), "hour").then(count(m.group(2), "minute"));
            SpokenForms seconds = count(m.group(3), "second");
            SpokenForms rest = two(m.group(2)).then(two(m.group(3)));
            SpokenForms hour = numbers.cardinal(Integer.parseInt(m.group(1))).preferred();
            SpokenForms bare = two(m.group(1)).then(rest).or(hour.then(rest));
            return new SpokenSpan(m.end(), named.then("and", "").then(seconds).or(bare));
        }
        m = NormalizationRule.match(CLOCK, text, from, to);
        if (m != null && Integer.parseInt(m.group(1)) <= 24) {
            return new SpokenSpan(m.end(), clock(m.group(1), m.group(2), true));
        }
        m = NormalizationRule.match(RATIO, text, from, to);
        if (m != null) {
            SpokenForms low = numbers.counted(m.group(2));
            SpokenForms forms =
                    numbers.counted(m.group(1)).then("to", "by", "", "and").then(low);
            return new SpokenSpan(m.end(), forms);
        }
        return null;
    }

    private SpokenForms clock(String hourDigits, @Nullable String minuteDigits, boolean oClock) {
        int hour = Integer.parseInt(hourDigits);
        SpokenForms said = numbers.cardinal(hour).preferred();
        int minute = minuteDigits == null ? 0 : Integer.parseInt(minuteDigits);
        if (minute == 0) {
            SpokenForms full = said.then("o'clock");
            SpokenForms hundred = hour > 12 ? said.then("hundred", "hundred hours") : SpokenForms.NONE;
            SpokenForms named = hour == 12
                    ? SpokenForms.of("noon")
                    : hour % 24 == 0 ? SpokenForms.of("midnight") : SpokenForms.NONE;
            return oClock ? full.or(said).or(hundred).or(named) : said;
        }
        SpokenForms minutes = numbers.cardinal(minute).preferred();
        SpokenForms forms = said.then(minute < 10 ? SpokenForms.of("oh", "zero").then(minutes) : minutes);
        SpokenForms next = numbers.cardinal(hour % 12 + 1).preferred();
        if (minute % 5 != 0 || hour > 12) {
            return forms;
        }
        return switch (minute) {
            case 15 -> forms.or(SpokenForms.of("quarter past", "a quarter past").then(said));
            case 30 -> forms.or(SpokenForms.of("half past").then(said));
            case 45 -> forms.or(SpokenForms.of("quarter to", "a quarter to").then(next));
            default ->
                minute < 30
                        ? forms.or(minutes.then("past").then(said))
                        : forms.or(numbers.cardinal(60 - minute)
                                .preferred()
                                .then("to")
                                .then(next));
        };
    }

    /** A length such as "1h 20m". */
    private SpokenForms hours(String hours, String minutes) {
        SpokenForms hour = count(hours, "hour");
        hour = Integer.parseInt(hours) == 1 ? hour.or("an hour") : hour;
        return hour.then("", "and")
                .then(count(minutes, "minute").or(numbers.counted(minutes).preferred()));
    }

    private SpokenForms half(@Nullable String letter) {
        if (letter == null) {
            return SpokenForms.SILENT;
        }
        return letter.equalsIgnoreCase("a") ? SpokenForms.of("a m", "am") : SpokenForms.of("p m", "pm");
    }

    private SpokenForms two(String digits) {
        int n = Integer.parseInt(digits);
        SpokenForms said = numbers.cardinal(n).preferred();
        return n < 10 && digits.length() == 2 ? SpokenForms.of("oh", "zero").then(said) : said;
    }

    private SpokenForms count(String digits, String unit) {
        int n = Integer.parseInt(digits);
        return numbers.cardinal(n).preferred().then(n == 1 ? unit : unit + "s");
    }
}
