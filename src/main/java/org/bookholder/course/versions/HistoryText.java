package org.bookholder.course.versions;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.course.Text;
import org.bookholder.session.LineChanges;

/** The history of a lesson as a text for a terminal of 80 columns. */
public final class HistoryText {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);
    private static final int WIDTH = 80;
    private static final int FIRST = 29;
    private static final String CHANGE = " ".repeat(6);

    private HistoryText() {}

    /** The text, line by line; times of day are those of a time zone. */
    public static List<String> of(LessonHistory history, ZoneId zone) {
        List<String> out = new ArrayList<>();
        out.add(history.title());
        for (LessonHistory.Entry entry : history.entries()) {
            List<String> rows = Text.wrap(entry.what(), WIDTH - FIRST);
            out.add(String.format(
                    Locale.ROOT,
                    "%s  %-10s %s",
                    TIME.format(entry.when().atZone(zone)),
                    entry.kind().label(),
                    rows.get(0)));
            rows.stream().skip(1).forEach(row -> out.add(" ".repeat(FIRST) + row));
            entry.changes().forEach(change -> write(change, out));
        }
        return out;
    }

    private static void write(LineChanges.Change change, List<String> out) {
        out.add(CHANGE + "line " + change.line()
                + switch (change.kind()) {
                    case ADDED -> ", new:";
                    case REMOVED -> ", taken out:";
                    case CHANGED -> ", changed:";
                });
        write("  - ", change.was(), out);
        write("  + ", change.is(), out);
    }

    private static void write(String mark, String text, List<String> out) {
        if (!text.isEmpty()) {
            List<String> rows = Text.wrap(text, WIDTH - CHANGE.length() - mark.length());
            for (int i = 0; i < rows.size(); i++) {
                out.add(CHANGE + (i == 0 ? mark : " ".repeat(mark.length())) + rows.get(i));
            }
        }
    }
}
