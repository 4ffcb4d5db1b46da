package org.bookholder.script.normalize;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Times of day and lengths with colons: "5 pm", "1:59 p.m.", "23:00", "2pm-5pm", "1:30", and ratios "16:9". */
final class TimeRule implements NormalizationRule {
    private static final String HALF = "([AaPp])\\.?[Mm]\\b\\.?";
    private static final String HOUR = "(\\d{1,2})(?:[:.]([0-5]\\d))?";
    private static final Pattern RANGE =
            Pattern.compile(HOUR + "(?:\\s?" + HALF + ")?(?:" + TO + "|\\sto\\s)" + HOUR + "\\s?" + HALF + END);
    private static final Pattern CLOCK_RANGE =
            Pattern.compile("(\\d{1,2}):(\\d\\d)" + TO + "(\\d{1,2}):(\\d\\d)" + END);
    private static final Pattern HALF_DAY = Pattern.compile(HOUR + "\\s?" + HALF + END);
    private static final Pattern CLOCK = Pattern.compile("(\\d{1,2}):([0-5]\\d)" + END);
    private static final Pattern RATIO = Pattern.compile("(\\d{1,4}):(\\d{1,4})" + END);

    /** Words beside which numbers with a colon are parts of a mixture. */
    private static final Pattern PARTS = Pattern.compile(
            "(?i)\\b(?:dilut|ratio|mix|scale|proportion|solution|odds|gear|slope|pitch|gradient|falls? of|adrenaline"
                    + "|concentrat|parts?\\b)");

    private static final Pattern THREE_PARTS = Pattern.compile("(\\d{1,3}):(\\d{1,3}):(\\d{1,3})" + END);

    /** Behind these a number with a colon is a time or a length, also where parts of a mixture are near. */
    private static final Pattern WHEN = Pattern.compile("(?i)\\b(?:at|in|until|till)\\s$");

    private static final String DAY_OF_24 = "([01]\\d|2[0-3])([0-5]\\d)";
    private static final String HRS = "\\s?(?:hrs?|hours|h)\\b\\.?";

    /** "1530 hrs", by the clock of 24 hours or so many hours. */
    private static final Pattern HOURS = Pattern.compile(DAY_OF_24 + HRS);

    private static final Pattern HOURS_RANGE = Pattern.compile(DAY_OF_24 + TO + DAY_OF_24 + HRS);

    /** Behind these a number of hours is a time of day, unless hours of something follow. */
    private static final Pattern BY_CLOCK = Pattern.compile(
            "(?i)\\b(?:(?:at|by|from|until|till|before|between|et[ad](?:\\s(?:of|is))?:?)"
                    + "(?:\\s(?:about|around))?|0\\d{3}\\s?(?:to|until|[-\u2013])|(?:from|between)\\s\\d{4}\\s(?:to|until|and))\\s$");

    private static final Pattern OF = Pattern.compile("\\sof\\b");

    private final NumberWords numbers;
    private final NormalizationRule amounts;
    private final NormalizationRule lengths;

    /**
     * A rule.
     *
     * @param amounts reads so many hours: "1200 h"
     * @param lengths reads hours, minutes and seconds: "1:15:30"
     */
    TimeRule(NumberWords numbers, NormalizationRule amounts, NormalizationRule lengths) {
        this.numbers = numbers;
        this.amounts = amounts;
        this.lengths = lengths;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher m = NormalizationRule.match(RANGE, text, from, to);
        if (m != null) {
            SpokenForms start = clock(m.group(1), m.group(2), false).then(half(m.group(3)));
            SpokenForms end = clock(m.group(4), m.group(5), false).then(half(m.group(6)));
            SpokenForms named = clock(m.group(1), m.group(2), false)
                    .first(2)
                    .then(m.group(3) == null ? SpokenForms.SILENT : inTheDay(m.group(3)))
                    .then("to", "until", "till")
                    .then(clock(m.group(4), m.group(5), false).first(2).then(inTheDay(m.group(6))));
            return new SpokenSpan(
                    m.end(), start.then("to", "until", "till").then(end).besides(named));
        }
        m = NormalizationRule.match(CLOCK_RANGE, text, from, to);
        if (m != null) {
            SpokenForms start = clock(m.group(1), m.group(2), true);
            return new SpokenSpan(m.end(), start.then("to", "until").then(clock(m.group(3), m.group(4), true)));
        }
        m = NormalizationRule.match(HALF_DAY, text, from, to);
        if (m != null) {
            SpokenForms bare = clock(m.group(1), m.group(2), false);
            bare = m.group(2) == null || m.group(2).equals("00") ? bare.or(bare.then("o'clock")) : bare;
            SpokenForms forms = bare.then(half(m.group(3))).or(bare.then(inTheDay(m.group(3))));
            return new SpokenSpan(m.end(), forms.or(named(m)));
        }
        return withoutHalf(text, from, to);
    }

    private SpokenForms byTwentyFour(Matcher m) {
        SpokenForms military = military(m.group(1), m.group(2));
        return military.then("hours").or(military).or(clock(m.group(1), m.group(2), false));
    }

    /** "Fifteen hundred", "fifteen thirty". */
    private SpokenForms military(String hours, String minutes) {
        if (!minutes.equals("00")) {
            return clock(hours, minutes, false).first(2);
        }
        SpokenForms hour = numbers.cardinal(Integer.parseInt(hours)).preferred();
        return (hours.startsWith("0") ? SpokenForms.of("oh", "zero").then(hour).or(hour) : hour).then("hundred");
    }

    /** "1530 hrs": a time of day behind what says so or with a zero before it, else so many hours first. */
    private SpokenForms hours(Matcher m, String text, int from, int to) {
        SpokenSpan written = amounts.at(text, from, to);
        SpokenForms amount = written != null
                ? written.forms()
                : numbers.counted(m.group(1) + m.group(2)).then("hours");
        if (isByClock(m, text)) {
            return byTwentyFour(m).besides(amount);
        }
        SpokenForms military = military(m.group(1), m.group(2));
        return amount.besides(m.group(2).equals("00") ? military.then("hours", "") : byTwentyFour(m));
    }

    /** "0900-1700 hrs". */
    private SpokenForms hoursRange(Matcher m) {
        SpokenForms start = military(m.group(1), m.group(2));
        SpokenForms end = military(m.group(3), m.group(4));
        return start.then("to", "until").then(end).then("hours", "");
    }

    private static boolean isByClock(Matcher m, String text) {
        if (m.group(1).startsWith("0")) {
            return true;
        }
        return BY_CLOCK.matcher(text.substring(Math.max(0, m.start() - 30), m.start()))
                        .find()
                && NormalizationRule.match(OF, text, m.end(), text.length()) == null;
    }

    /** "3:2:1", or a length where it may be one. */
    private SpokenSpan threeParts(Matcher m, String text, int from, int to) {
        SpokenForms parts = threeParts(m);
        SpokenSpan length = lengths.at(text, from, to);
        if (length == null || length.end() != m.end()) {
            return new SpokenSpan(m.end(), parts);
        }
        return new SpokenSpan(
                m.end(), isWhen(text, from) ? length.forms().besides(parts) : parts.besides(length.forms()));
    }

    private static boolean isWhen(String text, int from) {
        return WHEN.matcher(text.substring(Math.max(0, from - 8), from)).find();
    }

    /** "3:2:1". */
    private SpokenForms threeParts(Matcher m) {
        SpokenForms to = SpokenForms.NONE;
        for (String between : new String[] {"to", ""}) {
            to = to.or(numbers.counted(m.group(1))
                    .preferred()
                    .then(between)
                    .then(numbers.counted(m.group(2)).preferred())
                    .then(between)
                    .then(numbers.counted(m.group(3)).preferred()));
        }
        return to;
    }

    private @Nullable SpokenSpan withoutHalf(String text, int from, int to) {
        Matcher three = NormalizationRule.match(THREE_PARTS, text, from, to);
        if (three != null && partsNear(text, from, three.end())) {
            return threeParts(three, text, from, to);
        }
        Matcher range = NormalizationRule.match(HOURS_RANGE, text, from, to);
        if (range != null && isByClock(range, text)) {
            return new SpokenSpan(range.end(), hoursRange(range));
        }
        Matcher hours = NormalizationRule.match(HOURS, text, from, to);
        if (hours != null) {
            return new SpokenSpan(hours.end(), hours(hours, text, from, to));
        }
        Matcher m = NormalizationRule.match(CLOCK, text, from, to);
        if (m != null && Integer.parseInt(m.group(1)) <= 24) {
            SpokenForms clock = clock(m.group(1), m.group(2), true);
            boolean parts = partsNear(text, from, m.end());
            SpokenForms ratio = numbers.counted(m.group(1))
                    .preferred()
                    .then("to", "in", "over")
                    .then(numbers.counted(m.group(2)).preferred());
            SpokenForms time = clock.or(length(m.group(1), m.group(2)));
            if (parts) {
                // only one in so many is a part behind "at": "diluted at 1:20", but "the pitch is at 9:30"
                boolean one = m.group(1).equals("1");
                time = !isWhen(text, from) ? ratio.or(time) : one ? time.besides(ratio) : time;
            }
            return new SpokenSpan(m.end(), time);
        }
        SpokenForms length = m == null ? SpokenForms.NONE : length(m.group(1), m.group(2));
        m = NormalizationRule.match(RATIO, text, from, to);
        if (m != null) {
            SpokenForms low = numbers.counted(m.group(2));
            SpokenForms forms = numbers.counted(m.group(1))
                    .then(
                            m.group(1).equals("1")
                                    ? SpokenForms.of("to", "in", "by", "")
                                    : SpokenForms.of("to", "by", "", "and"))
                    .then(low)
                    .first(18)
                    .or(length);
            return new SpokenSpan(m.end(), forms);
        }
        return null;
    }

    private static boolean partsNear(String text, int from, int end) {
        return PARTS.matcher(text.substring(Math.max(0, from - 30), Math.min(text.length(), end + 20)))
                .find();
    }

    /** "12pm" and "12am". */
    private static SpokenForms named(Matcher m) {
        boolean twelve =
                m.group(1).equals("12") && (m.group(2) == null || m.group(2).equals("00"));
        if (!twelve) {
            return SpokenForms.NONE;
        }
        return m.group(3).equalsIgnoreCase("a") ? SpokenForms.of("midnight") : SpokenForms.of("noon", "midday");
    }

    /** A length that looks like a time of day: "1:30" as a minute or an hour and thirty. */
    private SpokenForms length(String whole, String part) {
        SpokenForms rest = numbers.cardinal(Integer.parseInt(part)).preferred();
        SpokenForms forms = SpokenForms.NONE;
        for (String unit : new String[] {"minute", "hour"}) {
            SpokenForms first = numbers.count(whole, unit);
            first = whole.equals("1") ? first.or(Units.article(unit) + " " + unit) : first;
            forms = forms.or(first.then("", "and").then(rest.then("", unit.equals("hour") ? "minutes" : "seconds")));
            if (part.equals("30")) {
                String half = whole.equals("1") ? Units.article(unit) + " " + unit + " and a half" : "";
                SpokenForms halves = numbers.counted(whole).preferred().then("and a half " + unit + "s");
                forms = forms.or(half.isEmpty() ? halves : halves.or(half));
            }
        }
        return Integer.parseInt(part) == 0 ? SpokenForms.NONE : forms;
    }

    private SpokenForms clock(String hourDigits, @Nullable String minuteDigits, boolean oClock) {
        int hour = Integer.parseInt(hourDigits);
        SpokenForms said = numbers.cardinal(hour).preferred();
        int minute = minuteDigits == null ? 0 : Integer.parseInt(minuteDigits);
        if (minute == 0) {
            SpokenForms full = said.then("o'clock");
            SpokenForms hundred = hour > 12 && hour < 24
                    ? said.then("hundred", "hundred hours")
                            .or(numbers.cardinal(hour % 12).preferred().then("p m", "pm", "o'clock"))
                    : SpokenForms.NONE;
            hundred = hourDigits.startsWith("0") && hour > 0
                    ? SpokenForms.of("oh", "", "zero")
                            .then(said)
                            .then("hundred", "hundred hours")
                            .or(said.then("a m", "am"))
                    : hundred;
            SpokenForms named = hour == 12
                    ? SpokenForms.of("noon")
                    : hour % 24 == 0 ? SpokenForms.of("midnight") : SpokenForms.NONE;
            return oClock ? full.or(said).or(hundred).or(named) : said;
        }
        SpokenForms minutes = numbers.cardinal(minute).preferred();
        boolean led = hourDigits.startsWith("0") && hour > 0;
        said = led ? said.or(SpokenForms.of("oh", "zero").then(said)) : said;
        SpokenForms forms = said.then(minute < 10 ? SpokenForms.of("oh", "zero").then(minutes) : minutes);
        forms = minute < 10 && hour > 9 ? forms.or(said.then(minutes)) : forms;
        SpokenForms next = numbers.cardinal(hour % 12 + 1).preferred();
        if (hour > 12 && hour < 24) {
            SpokenForms early = clock(String.valueOf(hour - 12), minuteDigits, false);
            return forms.or(early).or(early.preferred().then("p m", "pm"));
        }
        if (hour == 0) {
            forms = forms.or(SpokenForms.of("zero zero", "oh oh", "twelve").then(minutes));
        }
        if (minute % 5 != 0 || hour > 12) {
            return forms;
        }
        return switch (minute) {
            case 15 -> forms.or(SpokenForms.of("quarter past", "a quarter past").then(said));
            case 30 -> forms.or(SpokenForms.of("half past", "half").then(said));
            case 45 -> forms.or(SpokenForms.of("quarter to", "a quarter to").then(next));
            default ->
                minute < 30
                        ? forms.or(minutes.then("past", "after", "minutes past").then(said))
                        : forms.or(numbers.cardinal(60 - minute)
                                .preferred()
                                .then("to")
                                .then(next));
        };
    }

    private static SpokenForms inTheDay(String letter) {
        return letter.equalsIgnoreCase("a")
                ? SpokenForms.of("in the morning")
                : SpokenForms.of("in the afternoon", "in the evening", "at night");
    }

    private SpokenForms half(@Nullable String letter) {
        if (letter == null) {
            return SpokenForms.SILENT;
        }
        return letter.equalsIgnoreCase("a") ? SpokenForms.of("a m", "am") : SpokenForms.of("p m", "pm");
    }
}
