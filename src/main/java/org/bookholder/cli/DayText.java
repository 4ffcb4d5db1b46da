package org.bookholder.cli;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.bookholder.app.day.Day;
import org.bookholder.app.day.DaySession;
import org.bookholder.wording.BreakText;
import org.bookholder.wording.Cautions;
import org.bookholder.wording.LinesText;

/** A presenter's day as a text for a terminal. */
final class DayText {
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("EEEE d MMMM uuuu", Locale.ENGLISH);
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    private DayText() {}

    /** The lines; times of day are those of {@code zone}. */
    static List<String> of(Day day, ZoneId zone) {
        List<String> lines = new ArrayList<>();
        lines.add(DATE.format(day.now().atZone(zone)));
        if (day.sessions().isEmpty()) {
            lines.add("Nothing has been read at a microphone today. What is read from a recording does not count.");
        } else {
            lines.add(count(day.sessions().size(), "session") + ", "
                    + length(day.report().reading()) + " of reading, "
                    + length(day.report().onCamera()) + " on camera");
            lines.add("");
            lines.addAll(rows(day, zone));
            lines.add("");
            lines.add("Last take ended " + length(day.resting()) + " ago.");
            lines.addAll(advice(day));
            if (day.pickups() > 0) {
                lines.add(count(day.pickups(), "line") + " to pick up. If everything is still set up, pick "
                        + (day.pickups() == 1 ? "it" : "them") + " up before the light changes.");
            }
        }
        lines.add("");
        lines.addAll(Cautions.lines());
        return lines;
    }

    /** Sessions and rests by the time at which they began. */
    private static List<String> rows(Day day, ZoneId zone) {
        Stream<Map.Entry<Instant, String>> sessions = day.sessions().stream().map(s -> Map.entry(s.began(), row(s)));
        Stream<Map.Entry<Instant, String>> rests =
                day.rests().stream().map(r -> Map.entry(r.from(), "rest of " + length(r.length())));
        return Stream.concat(sessions, rests)
                .sorted(Comparator.comparing(Map.Entry::getKey))
                .map(row -> TIME.format(row.getKey().atZone(zone)) + "  " + row.getValue())
                .toList();
    }

    private static String row(DaySession session) {
        return String.format(
                Locale.ROOT,
                "%s: %s, %s, %s on camera, %s",
                session.title(),
                LinesText.of(session.lines()),
                count(session.takes(), "take"),
                length(session.onCamera()),
                session.pickups() == 0 ? "nothing to pick up" : count(session.pickups(), "line") + " to pick up");
    }

    private static List<String> advice(Day day) {
        List<String> warnings =
                day.report().warnings().stream().map(BreakText::of).toList();
        if (!warnings.isEmpty()) {
            return warnings;
        }
        return day.report().toNextBreak().stream()
                .map(left -> "The next break is advised after " + length(left) + " more.")
                .toList();
    }

    private static String count(int number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }

    private static String length(Duration length) {
        return length.toHours() == 0
                ? length.toMinutes() + " min"
                : length.toHours() + " h " + length.toMinutesPart() + " min";
    }
}
