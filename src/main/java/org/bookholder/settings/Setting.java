package org.bookholder.settings;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.List;
import org.bookholder.problem.ProblemException;

/**
 * A setting as it was written: name and text, not interpreted yet.
 *
 * @param name its name
 * @param text the value
 * @param where file and line
 */
public record Setting(String name, String text, String where) {
    private static final int YEARS = 100;
    private static final int CENTURY = 20;

    /**
     * The value as a whole number.
     *
     * @param unit what is counted, plural, for messages
     * @throws ProblemException if it is not a number, or not in the range {@code from} to {@code to}
     */
    public int whole(int from, int to, String unit) throws ProblemException {
        String range = "give " + from + " to " + to + " " + unit;
        if (!text.matches("[+-]?\\d{1,9}")) {
            throw problem(name + " '" + Settings.brief(text) + "' is not a whole number", range);
        }
        int number = Integer.parseInt(text);
        if (number < from || number > to) {
            throw problem(name + " " + number + " is out of range", range);
        }
        return number;
    }

    /**
     * The value as a number with or without decimals.
     *
     * @param unit what is measured, plural, for messages
     * @throws ProblemException if it is not a number, or not in the range {@code from} to {@code to}
     */
    public double number(double from, double to, String unit) throws ProblemException {
        String range = "give " + plain(from) + " to " + plain(to) + " " + unit;
        if (!text.matches("[+-]?\\d{1,9}(\\.\\d{1,9})?")) {
            throw problem(name + " '" + Settings.brief(text) + "' is not a number", range);
        }
        double number = Double.parseDouble(text);
        if (number < from || number > to) {
            throw problem(name + " " + text + " is out of range", range);
        }
        return number;
    }

    /**
     * The value as a date of this century.
     *
     * @throws ProblemException if there is no such date
     */
    public LocalDate day() throws ProblemException {
        try {
            LocalDate day = LocalDate.parse(text);
            if (day.getYear() / YEARS != CENTURY) {
                throw problem(
                        "the year of " + name + " '" + Settings.brief(text) + "' looks wrong",
                        "give a day from 2000 to 2099");
            }
            return day;
        } catch (DateTimeException e) {
            throw new ProblemException(
                    "there is no day '" + Settings.brief(text) + "'",
                    where,
                    "write it as year-month-day: 2027-03-09",
                    e);
        }
    }

    /**
     * The value as a time of day.
     *
     * @throws ProblemException if there is no such time
     */
    public LocalTime time() throws ProblemException {
        try {
            return LocalTime.parse(text.length() == "9:30".length() ? "0" + text : text);
        } catch (DateTimeException e) {
            throw new ProblemException(
                    "there is no time of day '" + Settings.brief(text) + "'",
                    where,
                    "write it as hours:minutes: 09:30",
                    e);
        }
    }

    /** The values separated by commas; an empty list if the text is empty. */
    public List<Setting> parts() {
        return Arrays.stream(text.split(",", -1))
                .map(part -> new Setting(name, part.strip(), where))
                .filter(part -> !text.isBlank())
                .toList();
    }

    /**
     * The value as yes (true) or no (false).
     *
     * @throws ProblemException if it is neither
     */
    public boolean yes() throws ProblemException {
        return oneOf(List.of("yes", "no")).equals("yes");
    }

    /**
     * The value, which must be one of these.
     *
     * @throws ProblemException if it is not
     */
    public String oneOf(List<String> values) throws ProblemException {
        if (!values.contains(text)) {
            throw problem(
                    name + " '" + Settings.brief(text) + "' is not known", "give one of " + String.join(", ", values));
        }
        return text;
    }

    /** A problem with this value. */
    public ProblemException problem(String what, String remedy) {
        return new ProblemException(what, where, remedy);
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
    }
}
