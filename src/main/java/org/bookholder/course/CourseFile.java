package org.bookholder.course;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.DiskProblems;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.SpokenHabits;
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
    private static final String ON_DAY = "lessons";
    private static final String SAY = "say";
    private static final int LONGEST_SAYING = 60;
    private static final Pattern DATE = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");

    /** How a value is filled in. */
    public enum Kind {
        /** A line of text. */
        TEXT,
        /** A number with its unit. */
        NUMBER,
        /** A day. */
        DATE,
        /** A time of day. */
        TIME,
        /** One of several. */
        CHOICE
    }

    /**
     * A single value.
     *
     * @param path its group and name, with a slash between them
     * @param label what it is called on a form
     * @param unit the unit of its number, or an empty text
     * @param kind how it is filled in
     * @param meaning what it is, and what holds if it is left out
     * @param value the present value; empty if it is left out
     * @param choices what can be chosen, each with its words, the first if it is left out; none unless it is a choice
     */
    public record Field(
            String path,
            String label,
            String unit,
            Kind kind,
            String meaning,
            String value,
            Map<String, String> choices) {}

    /** All single values that can be set. */
    public List<Field> fields() throws ProblemException {
        YamlEdit file = read();
        List<Field> fields = new ArrayList<>();
        for (CourseFields.Known known : CourseFields.all()) {
            String value = file.value(names(known.path())).orElse("");
            fields.add(new Field(
                    known.path(), known.label(), known.unit(), known.kind(), known.meaning(), value, known.choices()));
        }
        return fields;
    }

    /** The days on which recording is planned, in order. */
    public List<LocalDate> days() throws ProblemException {
        return days(read());
    }

    private static List<LocalDate> days(YamlEdit file) throws ProblemException {
        List<LocalDate> days = new ArrayList<>();
        for (String item : file.items(DAYS)) {
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
        if (CourseFields.at(path).isEmpty()) {
            throw new ProblemException("there is no such setting", path, "choose another one");
        }
        String text = value.strip();
        YamlEdit file = read();
        write(text.isEmpty() ? file.without(names(path)) : file.with(names(path), text));
    }

    /** Adds a day to those on which recording is planned, or takes it away. */
    public void plan(LocalDate day, boolean recording) throws ProblemException {
        YamlEdit file = read();
        List<LocalDate> days = days(file);
        int known = days.indexOf(day);
        if (recording && known < 0) {
            write(withDay(file, day).text());
        } else if (!recording && known >= 0) {
            write(days.size() == 1 ? file.without(DAYS) : file.withoutItem(DAYS, known));
        }
    }

    /**
     * A recording day with hours of its own.
     *
     * @param day the day
     * @param from when it begins, as it is written; empty if as usual
     * @param hours how long it is, as it is written; empty if as usual
     */
    public record OwnHours(LocalDate day, String from, String hours) {}

    /** The recording days, each with its own hours if it has some. */
    public List<OwnHours> hours() throws ProblemException {
        YamlEdit file = read();
        List<OwnHours> all = new ArrayList<>();
        List<LocalDate> days = days(file);
        for (int i = 0; i < days.size(); i++) {
            all.add(new OwnHours(
                    days.get(i),
                    file.valueOfItem(DAYS, i, "from").orElse(""),
                    file.valueOfItem(DAYS, i, "hours").orElse("")));
        }
        return all;
    }

    /**
     * Gives a recording day hours of its own.
     *
     * @param from when it begins; empty for the usual time
     * @param hours how long it is; empty for the usual length
     * @throws ProblemException if this is no recording day, or one of them is not understood; nothing is written then
     */
    public void setHours(LocalDate day, String from, String hours) throws ProblemException {
        YamlEdit file = read();
        int index = days(file).indexOf(day);
        if (index < 0) {
            throw new ProblemException("this is no recording day", day.toString(), "choose it in the calendar first");
        }
        if (file.valueOfItem(DAYS, index, "day").isEmpty()) {
            file = file.becomes(file.withItemChanged(DAYS, index, "{day: " + day + "}"));
        }
        file = file.becomes(file.withValueOfItem(DAYS, index, "from", from.strip()));
        write(file.withValueOfItem(DAYS, index, "hours", hours.strip()));
    }

    /**
     * Puts a lesson on a recording day, which becomes one if it is none yet, and takes it off any other; without a day the plan
     * chooses again.
     *
     * @param script the lesson's script, as it is or would be named in the file
     */
    public void putOn(String script, Optional<LocalDate> day) throws ProblemException {
        YamlEdit file = read();
        for (int i = 0; i < days(file).size(); i++) {
            List<String> lessons = new ArrayList<>(file.listOfItem(DAYS, i, ON_DAY));
            if (lessons.removeIf(named -> LessonNames.areSame(named, script))) {
                file = file.becomes(file.withListOfItem(DAYS, i, ON_DAY, lessons));
            }
        }
        if (day.isPresent()) {
            file = withDay(file, day.get());
            int index = days(file).indexOf(day.get());
            if (file.valueOfItem(DAYS, index, "day").isEmpty()) {
                file = file.becomes(file.withItemChanged(DAYS, index, "{day: " + day.get() + "}"));
            }
            List<String> lessons = new ArrayList<>(file.listOfItem(DAYS, index, ON_DAY));
            lessons.add(script);
            file = file.becomes(file.withListOfItem(DAYS, index, ON_DAY, lessons));
        }
        write(file.text());
    }

    private static YamlEdit withDay(YamlEdit file, LocalDate day) throws ProblemException {
        List<LocalDate> days = days(file);
        if (days.contains(day)) {
            return file;
        }
        int later = (int) days.stream().filter(other -> other.isBefore(day)).count();
        return file.becomes(file.withItem(DAYS, later, day.toString()));
    }

    /** All of it as text; empty if there is no such file. */
    public String text() throws ProblemException {
        return read().text();
    }

    /** Writes all of it, as it was before. */
    public void restore(String text) throws ProblemException {
        write(text);
    }

    /**
     * Says how much there is to edit in a lesson: where the file lists the lessons, beside its script; else in a group for that.
     *
     * @param script the lesson's script, as it is or would be named in the file
     * @throws ProblemException if the file lists the lessons without this one; nothing is written then
     */
    public void setKind(String script, LessonKind kind) throws ProblemException {
        YamlEdit file = read();
        if (!ListedLessons.lists(file)) {
            write(file.with(List.of("kinds", script), kind.label()));
            return;
        }
        ListedLessons.Place place = ListedLessons.place(file, script)
                .orElseThrow(() -> new ProblemException("the course has no such lesson", script, "look again"));
        if (file.valueOfItem(place.list(), place.index(), "script").isEmpty()) {
            write(file.withItemChanged(place.list(), place.index(), ListedLessons.item(script, kind)));
        } else {
            write(file.withValueOfItem(place.list(), place.index(), "kind", kind.label()));
        }
    }

    /**
     * Chooses how something is said in all lessons.
     *
     * @param written what is written, such as a number
     * @param form how it is said, in words; empty to take the choice back
     * @throws ProblemException if it can't be said so; nothing is written then
     */
    public void say(String written, String form) throws ProblemException {
        String key = written.strip().toLowerCase(Locale.ROOT);
        if (key.isEmpty() || key.length() > LONGEST_SAYING || key.matches("(?s).*\\p{Cntrl}.*")) {
            throw new ProblemException(
                    "this is no word or number of a script", key, "give it as it is written in the script");
        }
        YamlEdit file = read();
        List<String> path = List.of(SAY, key);
        if (form.isBlank()) {
            boolean only = CourseReader.sayings(folder).keySet().equals(Set.of(key));
            write(only ? file.without(List.of(SAY)) : file.without(path));
            return;
        }
        String words = SpokenHabits.form(form)
                .orElseThrow(() -> new ProblemException(
                        "this can't be said", form.strip(), "write it in words, as in three fifty"));
        write(file.with(path, words));
    }

    /** Adds lessons behind the others, in the last module if there is one, if the file lists them; otherwise they are found. */
    public void addLessons(List<String> scripts) throws ProblemException {
        YamlEdit file = read();
        List<String> fresh = new ArrayList<>(scripts);
        fresh.removeIf(script -> ListedLessons.place(file, script).isPresent());
        if (!ListedLessons.lists(file) || fresh.isEmpty()) {
            return;
        }
        List<String> list = ListedLessons.list(ListedLessons.modules(file));
        YamlEdit longer = file;
        for (String script : fresh) {
            int end = longer.items(list).size();
            longer = longer.becomes(longer.withLine(list, end, YamlEdit.written(script)));
        }
        write(longer.text());
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

    YamlEdit read() throws ProblemException {
        Path file = file();
        return new YamlEdit(Files.exists(file) ? ScriptReader.text(file) : "", file.toString());
    }

    void write(String text) throws ProblemException {
        CourseSettings.check(folder, text);
        try {
            new AtomicFiles(Access.KEPT)
                    .writeAll(Map.of(file(), out -> out.write(text.getBytes(StandardCharsets.UTF_8))));
        } catch (IOException e) {
            throw DiskProblems.writing(file(), e);
        }
    }
}
