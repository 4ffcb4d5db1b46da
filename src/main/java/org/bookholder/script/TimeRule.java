package org.bookholder.script;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Times of day and lengths with colons: "5 pm", "1:59 p.m.", "23:00", "2pm-5pm", "1:01:01", and ratios "16:9". */
final class TimeRule implements SpeakingRule {
    private static final String HALF = "([AaPp])\\.?[Mm]\\b\\.?";
    private static final String HOUR = "(\\d{1,2})(?::(\\d\\d))?";
    private static final Pattern RANGE =
            Pattern.compile(HOUR + "(?:\\s?" + HALF + ")?(?:" + TO + "|\\sto\\s)" + HOUR + "\\s?" + HALF + END);
    private static final Pattern CLOCK_RANGE =
            Pattern.compile("(\\d{1,2}):(\\d\\d)" + TO + "(\\d{1,2}):(\\d\\d)" + END);
    private static final Pattern HALF_DAY = Pattern.compile(HOUR + "\\s?" + HALF + END);
    private static final Pattern CLOCK = Pattern.compile("(\\d{1,2}):([0-5]\\d)" + END);
    private static final Pattern LENGTH = Pattern.compile("(\\d{1,2}):([0-5]\\d):([0-5]\\d)" + END);
    private static final Pattern RATIO = Pattern.compile("(\\d{1,4}):(\\d{1,4})" + END);

    private final Numbers numbers;

    TimeRule(Numbers numbers) {
        this.numbers = numbers;
    }

    @Override
    public @Nullable Heard at(String text, int from, int to) {
        Matcher m = SpeakingRule.match(RANGE, text, from, to);
        if (m != null) {
            Forms start = clock(m.group(1), m.group(2), false).then(half(m.group(3)));
            Forms end = clock(m.group(4), m.group(5), false).then(half(m.group(6)));
            return new Heard(m.end(), start.then("to", "until").then(end));
        }
        m = SpeakingRule.match(CLOCK_RANGE, text, from, to);
        if (m != null) {
            Forms start = clock(m.group(1), m.group(2), true);
            return new Heard(m.end(), start.then("to", "until").then(clock(m.group(3), m.group(4), true)));
        }
        m = SpeakingRule.match(HALF_DAY, text, from, to);
        if (m != null) {
            Forms bare = clock(m.group(1), m.group(2), false);
            Forms inTheDay = m.group(3).equalsIgnoreCase("a")
                    ? Forms.of("in the morning")
                    : Forms.of("in the afternoon", "in the evening");
            Forms forms = bare.then(half(m.group(3))).or(bare.preferred().then(inTheDay));
            return new Heard(m.end(), forms);
        }
        return withoutHalf(text, from, to);
    }

    private @Nullable Heard withoutHalf(String text, int from, int to) {
        Matcher m = SpeakingRule.match(LENGTH, text, from, to);
        if (m != null) {
            Forms named = count(m.group(1), "hour").then(count(m.group(2), "minute"));
            Forms seconds = count(m.group(3), "second");
            Forms bare = two(m.group(1)).then(two(m.group(2))).then(two(m.group(3)));
            return new Heard(m.end(), named.then("and", "").then(seconds).or(bare));
        }
        m = SpeakingRule.match(CLOCK, text, from, to);
        if (m != null && Integer.parseInt(m.group(1)) <= 24) {
            return new Heard(m.end(), clock(m.group(1), m.group(2), true));
        }
        m = SpeakingRule.match(RATIO, text, from, to);
        if (m != null) {
            Forms low = numbers.counted(m.group(2));
            Forms forms =
                    numbers.counted(m.group(1)).then("to", "by", "", "and").then(low);
            return new Heard(m.end(), forms);
        }
        return null;
    }

    private Forms clock(String hourDigits, @Nullable String minuteDigits, boolean oClock) {
        int hour = Integer.parseInt(hourDigits);
        Forms said = numbers.cardinal(hour).preferred();
        int minute = minuteDigits == null ? 0 : Integer.parseInt(minuteDigits);
        if (minute == 0) {
            Forms full = said.then("o'clock");
            Forms hundred = hour > 12 ? said.then("hundred", "hundred hours") : Forms.NONE;
            return oClock ? full.or(said).or(hundred) : said;
        }
        Forms minutes = numbers.cardinal(minute).preferred();
        Forms forms = said.then(minute < 10 ? Forms.of("oh", "zero").then(minutes) : minutes);
        Forms next = numbers.cardinal(hour % 12 + 1).preferred();
        if (minute % 5 != 0 || hour > 12) {
            return forms;
        }
        return switch (minute) {
            case 15 -> forms.or(Forms.of("quarter past", "a quarter past").then(said));
            case 30 -> forms.or(Forms.of("half past").then(said));
            case 45 -> forms.or(Forms.of("quarter to", "a quarter to").then(next));
            default ->
                minute < 30
                        ? forms.or(minutes.then("past").then(said))
                        : forms.or(numbers.cardinal(60 - minute)
                                .preferred()
                                .then("to")
                                .then(next));
        };
    }

    private Forms half(@Nullable String letter) {
        if (letter == null) {
            return Forms.SILENT;
        }
        return letter.equalsIgnoreCase("a") ? Forms.of("a m", "am") : Forms.of("p m", "pm");
    }

    private Forms two(String digits) {
        int n = Integer.parseInt(digits);
        Forms said = numbers.cardinal(n).preferred();
        return n < 10 && digits.length() == 2 ? Forms.of("oh", "zero").then(said) : said;
    }

    private Forms count(String digits, String unit) {
        int n = Integer.parseInt(digits);
        return numbers.cardinal(n).preferred().then(n == 1 ? unit : unit + "s");
    }
}
