package org.bookholder.course;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Formats figures and text for a terminal. */
public final class Text {
    private static final int WIDTH = 80;

    private Text() {}

    /** A text cut to {@code width} characters, with an ellipsis if something was cut, and filled up with spaces. */
    public static String fit(String text, int width) {
        return String.format(Locale.ROOT, "%-" + width + "s", cut(text, width));
    }

    /** A text cut to {@code width} characters, with an ellipsis if something was cut. */
    public static String cut(String text, int width) {
        return text.length() <= width ? text : text.substring(0, width - 1) + "\u2026";
    }

    /** Seconds as minutes and seconds, 12:05, or hours, 1:02:05. */
    public static String clock(double seconds) {
        long whole = Math.round(seconds);
        return whole < 3600
                ? String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60)
                : String.format(Locale.ROOT, "%d:%02d:%02d", whole / 3600, whole / 60 % 60, whole % 60);
    }

    /** A length in hours and minutes: 2 h 05, 45 min. */
    public static String hours(Duration length) {
        long minutes = Math.round(length.toSeconds() / 60.0);
        return minutes < 60 ? minutes + " min" : String.format(Locale.ROOT, "%d h %02d", minutes / 60, minutes % 60);
    }

    /** A text in rows of at most 80 characters, broken at spaces. */
    public static List<String> wrap(String text) {
        return wrap(text, WIDTH);
    }

    /** A text in rows of at most {@code width} characters, broken at spaces. */
    public static List<String> wrap(String text, int width) {
        List<String> rows = new ArrayList<>();
        StringBuilder row = new StringBuilder();
        for (String word : text.split(" ", -1)) {
            if (!row.isEmpty() && row.length() + 1 + word.length() > width) {
                rows.add(row.toString());
                row.setLength(0);
            }
            row.append(row.isEmpty() ? "" : " ").append(word);
        }
        rows.add(row.toString());
        return rows;
    }

    /** A number of things: 1 lesson, 2 lessons. */
    public static String count(long number, String thing) {
        return number + " " + thing + (number == 1 ? "" : "s");
    }

    /** "line 3" or "lines 3, 5 and 8". */
    public static String lines(List<Integer> lines) {
        List<String> numbers = lines.stream().map(String::valueOf).toList();
        int last = numbers.size() - 1;
        return last == 0
                ? "line " + numbers.get(0)
                : "lines " + String.join(", ", numbers.subList(0, last)) + " and " + numbers.get(last);
    }

    /** Numbers in ascending order as ranges: "1 to 4", "7", "9, 10". */
    public static List<String> ranges(List<Integer> numbers) {
        List<String> ranges = new ArrayList<>();
        for (int i = 0; i < numbers.size(); i++) {
            int first = numbers.get(i);
            int last = first;
            while (i + 1 < numbers.size() && numbers.get(i + 1) == last + 1) {
                last = numbers.get(++i);
            }
            ranges.add(first == last ? String.valueOf(first) : first + (last == first + 1 ? ", " : " to ") + last);
        }
        return ranges;
    }
}
