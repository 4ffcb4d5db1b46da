package org.bookholder.fatigue;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.bookholder.fatigue.FatigueLimits.Limit;
import org.bookholder.problem.ProblemException;

/**
 * Limits as a text that people write: on each line a name, a colon and whole minutes with commas between them. What
 * follows a {@code #} is a comment; a name that is left out keeps its default.
 */
public final class LimitsText {
    /** A day: nobody reads for longer. */
    private static final long MOST_MINUTES = 24 * 60;

    private static final int STEPS = 3;
    private static final List<String> NAMES = List.of("voice", "screen", "reading", "on-camera", "break", "recovery");

    private final String source;
    private final Map<String, List<Duration>> given = new HashMap<>();

    private LimitsText(String source) {
        this.source = source;
    }

    /**
     * Reads limits.
     *
     * @param source where the text comes from, for messages
     * @throws ProblemException if a name is not known or given twice, or minutes are missing, out of range or out of order
     */
    public static FatigueLimits parse(String text, String source) throws ProblemException {
        LimitsText limits = new LimitsText(source);
        List<String> lines = text.lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).replaceFirst("#.*", "").strip();
            if (!line.isEmpty()) {
                limits.take(line, source + ":" + (i + 1));
            }
        }
        return limits.toLimits();
    }

    /** The text that reads back as {@code limits}, with a comment on each line. */
    public static List<String> of(FatigueLimits limits) {
        return List.of(
                line("voice", "reading since the last break", steps(limits.voice())),
                line("screen", "time since the last break", steps(limits.screen())),
                line("reading", "reading in the whole session", steps(limits.reading())),
                line("on-camera", "on camera in the whole session", steps(limits.onCamera())),
                line("break", "the shortest rest that counts as a break", Stream.of(limits.realBreak())),
                line("recovery", "a rest after which all of these begin anew", Stream.of(limits.recovery())));
    }

    private static Stream<Duration> steps(Limit limit) {
        return Stream.of(limit.coming(), limit.due(), limit.overdue());
    }

    private static String line(String name, String comment, Stream<Duration> durations) {
        List<String> minutes = durations.map(d -> Long.toString(d.toMinutes())).toList();
        return String.format(Locale.ROOT, "%-26s# %s", name + ": " + String.join(", ", minutes), comment);
    }

    private void take(String line, String where) throws ProblemException {
        int colon = line.indexOf(':');
        String name = colon < 0 ? line : line.substring(0, colon).strip();
        if (!NAMES.contains(name)) {
            throw new ProblemException(
                    "there is no limit '" + name + "'", where, "write one of " + String.join(", ", NAMES));
        }
        int wanted = name.equals("break") || name.equals("recovery") ? 1 : STEPS;
        String form = wanted == 1
                ? "write " + name + ": and whole minutes, 1 to " + MOST_MINUTES
                : "write " + name + ": near, at, past, in whole minutes from 1 to " + MOST_MINUTES + ", rising";
        String[] minutes = line.substring(colon + 1).split(",", -1);
        if (colon < 0 || minutes.length != wanted) {
            throw new ProblemException(
                    "'" + name + "' needs " + wanted + (wanted == 1 ? " number" : " numbers"), where, form);
        }
        Duration[] durations = new Duration[wanted];
        for (int i = 0; i < wanted; i++) {
            durations[i] = minutes(minutes[i].strip(), name, where, form);
            if (i > 0 && durations[i].compareTo(durations[i - 1]) < 0) {
                throw new ProblemException("the minutes of '" + name + "' fall", where, form);
            }
        }
        if (given.put(name, List.of(durations)) != null) {
            throw new ProblemException("'" + name + "' is given twice", where, "leave one of them");
        }
    }

    private static Duration minutes(String text, String name, String where, String form) throws ProblemException {
        if (text.matches("\\d{1,9}")) {
            long minutes = Long.parseLong(text);
            if (minutes >= 1 && minutes <= MOST_MINUTES) {
                return Duration.ofMinutes(minutes);
            }
        }
        throw new ProblemException("'" + text + "' is no limit for '" + name + "'", where, form);
    }

    private FatigueLimits toLimits() throws ProblemException {
        FatigueLimits defaults = FatigueLimits.defaults();
        Duration realBreak = one("break", defaults.realBreak());
        Duration recovery = one("recovery", defaults.recovery());
        if (recovery.compareTo(realBreak) < 0) {
            throw new ProblemException(
                    "'recovery' is shorter than 'break'", source, "make it as long at least, usually some hours");
        }
        return new FatigueLimits(
                limit("voice", defaults.voice()),
                limit("screen", defaults.screen()),
                limit("reading", defaults.reading()),
                limit("on-camera", defaults.onCamera()),
                realBreak,
                recovery);
    }

    private Duration one(String name, Duration otherwise) {
        List<Duration> found = given.get(name);
        return found == null ? otherwise : found.get(0);
    }

    private Limit limit(String name, Limit otherwise) {
        List<Duration> found = given.get(name);
        return found == null ? otherwise : new Limit(found.get(0), found.get(1), found.get(2));
    }
}
