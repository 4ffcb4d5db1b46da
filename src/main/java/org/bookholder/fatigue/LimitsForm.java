package org.bookholder.fatigue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.fatigue.FatigueLimits.Limit;
import org.bookholder.problem.ProblemException;
import org.bookholder.settings.Form;
import org.bookholder.settings.Form.Field;
import org.bookholder.settings.Setting;
import org.bookholder.settings.SettingsText.Values;

/** The limits as people write them: whole minutes; for most limits, three numbers separated by commas. */
public final class LimitsForm {
    /** A day, as an upper bound. */
    private static final int MOST_MINUTES = 24 * 60;

    private static final int STEPS = 3;

    /** All settings; each value is its minutes. */
    public static final Form<List<Duration>> FORM = new Form<>(
            "limit",
            List.of(
                    new Field<>("voice", "reading since the last break", LimitsForm::steps),
                    new Field<>("screen", "time since the last break", LimitsForm::steps),
                    new Field<>("reading", "reading on the whole day", LimitsForm::steps),
                    new Field<>("on-camera", "on camera on the whole day", LimitsForm::steps),
                    new Field<>("break", "the shortest rest that counts as a break", LimitsForm::single),
                    new Field<>("recovery", "a rest after which all of these start again", LimitsForm::single)));

    private LimitsForm() {}

    /**
     * Reads limits; a setting that is missing or wrong keeps its default.
     *
     * @param source where the text comes from, for messages
     * @param wrong receives a problem if break and recovery do not fit together
     */
    public static FatigueLimits of(Values<List<Duration>> values, String source, List<ProblemException> wrong) {
        FatigueLimits defaults = FatigueLimits.defaults();
        Map<String, List<Duration>> set = values.values();
        Duration realBreak = first(set, "break", defaults.realBreak());
        Duration recovery = first(set, "recovery", defaults.recovery());
        if (recovery.compareTo(realBreak) < 0) {
            wrong.add(new ProblemException(
                    "'recovery' is shorter than 'break'", source, "make it at least as long, usually some hours"));
            realBreak = defaults.realBreak();
            recovery = defaults.recovery();
        }
        return new FatigueLimits(
                limit(set, "voice", defaults.voice()),
                limit(set, "screen", defaults.screen()),
                limit(set, "reading", defaults.reading()),
                limit(set, "on-camera", defaults.onCamera()),
                realBreak,
                recovery);
    }

    /** Writes {@code limits} as lines that can be read back, each with a comment. */
    public static List<String> lines(FatigueLimits limits) {
        Map<String, String> all = values(limits);
        return FORM.lines(name -> Optional.ofNullable(all.get(name)));
    }

    /** The limits as they are written, by name. */
    public static Map<String, String> values(FatigueLimits limits) {
        Map<String, List<Duration>> all = Map.of(
                "voice", steps(limits.voice()),
                "screen", steps(limits.screen()),
                "reading", steps(limits.reading()),
                "on-camera", steps(limits.onCamera()),
                "break", List.of(limits.realBreak()),
                "recovery", List.of(limits.recovery()));
        Map<String, String> values = new LinkedHashMap<>();
        all.forEach((name, durations) -> values.put(name, minutes(durations)));
        return values;
    }

    private static List<Duration> steps(Limit limit) {
        return List.of(limit.coming(), limit.due(), limit.overdue());
    }

    private static String minutes(List<Duration> durations) {
        return durations.stream().map(d -> Long.toString(d.toMinutes())).collect(Collectors.joining(", "));
    }

    private static List<Duration> steps(Setting setting) throws ProblemException {
        List<Duration> steps = read(setting, STEPS, "three whole numbers, rising: early warning, limit, well over");
        if (steps.get(1).compareTo(steps.get(0)) < 0 || steps.get(2).compareTo(steps.get(1)) < 0) {
            throw setting.problem("the minutes of '" + setting.name() + "' fall", "write the smaller number first");
        }
        return steps;
    }

    private static List<Duration> single(Setting setting) throws ProblemException {
        return read(setting, 1, "a whole number of minutes");
    }

    private static List<Duration> read(Setting setting, int count, String form) throws ProblemException {
        List<Duration> read = new ArrayList<>();
        for (Setting part : setting.parts()) {
            read.add(Duration.ofMinutes(part.whole(1, MOST_MINUTES, "minutes")));
        }
        if (read.size() != count) {
            throw setting.problem(
                    "'" + setting.name() + "' needs " + count + (count == 1 ? " number" : " numbers"), "write " + form);
        }
        return read;
    }

    private static Duration first(Map<String, List<Duration>> set, String name, Duration otherwise) {
        List<Duration> found = set.get(name);
        return found == null ? otherwise : found.get(0);
    }

    private static Limit limit(Map<String, List<Duration>> set, String name, Limit otherwise) {
        List<Duration> found = set.get(name);
        return found == null ? otherwise : new Limit(found.get(0), found.get(1), found.get(2));
    }
}
