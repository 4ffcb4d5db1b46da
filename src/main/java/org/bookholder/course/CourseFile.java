package org.bookholder.course;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.DiskProblems;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.settings.YamlEdit;

/**
 * What is written about a course beside its lessons, to be changed value by value. Comments, order and all else stay as they are,
 * and what could not be read afterwards is not written.
 *
 * @param folder the course's folder
 */
public record CourseFile(Path folder) {
    private static final List<String> DAYS = List.of("recording", "days");
    private static final Pattern DATE = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");

    /**
     * A single value.
     *
     * @param path its group and name, with a slash between them
     * @param meaning what it is, and what holds if it is left out
     * @param value the present value; empty if it is left out
     */
    public record Field(String path, String meaning, String value) {}

    /** All single values that can be set. */
    public List<Field> fields() throws ProblemException {
        YamlEdit file = read();
        List<Field> fields = new ArrayList<>();
        for (String[] known : known()) {
            fields.add(new Field(known[0], known[1], file.value(names(known[0])).orElse("")));
        }
        return fields;
    }

    /** The days on which recording is planned, in order. */
    public List<LocalDate> days() throws ProblemException {
        List<LocalDate> days = new ArrayList<>();
        for (String item : read().items(DAYS)) {
            days.add(date(item));
        }
        return days;
    }

    /**
     * Sets a value, or leaves it out if it is empty.
     *
     * @throws ProblemException if the value is not understood; nothing is written then
     */
    public void set(String path, String value) throws ProblemException {
        if (known().stream().noneMatch(field -> field[0].equals(path))) {
            throw new ProblemException("there is no such setting", path, "choose another one");
        }
        String text = value.strip();
        YamlEdit file = read();
        write(text.isEmpty() ? file.without(names(path)) : file.with(names(path), text));
    }

    /** Adds a day to those on which recording is planned, or takes it away. */
    public void plan(LocalDate day, boolean recording) throws ProblemException {
        List<LocalDate> days = days();
        int known = days.indexOf(day);
        if (recording && known < 0) {
            int later = (int) days.stream().filter(other -> other.isBefore(day)).count();
            write(read().withItem(DAYS, later, day.toString()));
        } else if (!recording && known >= 0) {
            write(days.size() == 1 ? read().without(DAYS) : read().withoutItem(DAYS, known));
        }
    }

    private static LocalDate date(String item) throws ProblemException {
        Matcher date = DATE.matcher(item);
        if (!date.find()) {
            throw new ProblemException("a recording day has no date", item, "mend it in the file");
        }
        return LocalDate.parse(date.group());
    }

    private static List<String> names(String path) {
        return List.of(path.split("/", -1));
    }

    private Path file() {
        return folder.resolve(Course.FILE);
    }

    private YamlEdit read() throws ProblemException {
        Path file = file();
        return new YamlEdit(Files.exists(file) ? ScriptReader.text(file) : "", file.toString());
    }

    private void write(String text) throws ProblemException {
        CourseSettings.check(folder, text);
        try {
            new AtomicFiles(Access.KEPT)
                    .writeAll(Map.of(file(), out -> out.write(text.getBytes(StandardCharsets.UTF_8))));
        } catch (IOException e) {
            throw DiskProblems.writing(file(), e);
        }
    }

    private static List<String[]> known() {
        List<String[]> known = new ArrayList<>(List.of(
                field("title", "the course's title; else its folder's name"),
                field("pace", "words a minute for scripts that set none"),
                field("recording/from", "when the studio is free, as in 9:30; else 10:00"),
                field("recording/hours", "for how long, set-up and breaks included; else 3"),
                field("recording/set-up", "minutes to set up; else 30"),
                field("recording/ratio", "recorded minutes for each finished one; else your own, or 1.5"),
                field("editing/from", "the first day of editing, as in 2027-09-13"),
                field("editing/hours a week", "hours for editing each week"),
                field("editing/lessons a week", "lessons edited each week, at most"),
                field("editing/slack", "percent of the time kept for what goes wrong")));
        for (String kind : LessonKind.labels()) {
            known.add(field("editing/hours per minute/" + kind, "editing hours for each finished minute of this kind"));
        }
        known.addAll(List.of(
                field("delivery", "a file with what exported films have to be; else your own profile"),
                field("launch", "the day on which you hope to be ready"),
                field("costs/price", "what one sale costs the buyer; the other costs need it"),
                field("costs/currency", "the currency's name"),
                field("costs/equipment", "what the equipment costs"),
                field("costs/hour", "what an hour of your own is worth"),
                field("costs/hired course", "a quote for having the whole course edited"),
                field("costs/hired lesson", "or a quote for each lesson"),
                field("costs/kept", "percent of the price that you keep")));
        return known;
    }

    private static String[] field(String path, String meaning) {
        return new String[] {path, meaning};
    }
}
