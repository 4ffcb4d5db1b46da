package org.bookholder.script.normalize;

import java.time.DayOfWeek;
import java.time.Month;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Weekdays and months in ranges: "Mon-Fri", "Jan.–Mar.". */
final class NamedRangeRule implements NormalizationRule {
    private static final String DAY = "(?:Mon|Tue(?:s)?|Wed|Thu(?:rs?)?|Fri|Sat|Sun)(?:[a-z]{0,3}day)?\\.?";
    private static final String MONTH = "(?:Jan|Feb|Mar|Apr|May|June?|July?|Aug|Sept?|Oct|Nov|Dec)\\.?";
    private static final Pattern RANGE =
            Pattern.compile("(?:(" + DAY + ")" + TO + "(" + DAY + ")|(" + MONTH + ")" + TO + "(" + MONTH + "))" + END);

    private static final Pattern ONE_DAY = Pattern.compile(DAY);
    private static final Pattern ONE_MONTH = Pattern.compile(MONTH);

    private static final List<String> NAMES = Stream.concat(
                    Arrays.stream(DayOfWeek.values()).map(DayOfWeek::name),
                    Arrays.stream(Month.values()).map(Month::name))
            .map(name -> name.toLowerCase(Locale.ROOT))
            .toList();

    @Override
    public boolean mayBegin(char first) {
        return "MTWFSJAOND".indexOf(first) >= 0;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher m = NormalizationRule.match(RANGE, text, from, to);
        if (m == null) {
            return null;
        }
        int first = m.group(1) != null ? 1 : 3;
        return new SpokenSpan(
                m.end(),
                SpokenForms.of(name(m.group(first)))
                        .then("to", "through", "until", "")
                        .then(name(m.group(first + 1))));
    }

    /** The weekday or month that capitalised letters without a full stop may stand for; empty if for none. */
    static String shortened(String letters) {
        return letters.length() < 5
                        && (ONE_DAY.matcher(letters).matches()
                                || ONE_MONTH.matcher(letters).matches())
                ? name(letters)
                : "";
    }

    private static String name(String written) {
        String start = written.substring(0, 3).toLowerCase(Locale.ROOT);
        return NAMES.stream().filter(name -> name.startsWith(start)).findFirst().orElse(start);
    }
}
