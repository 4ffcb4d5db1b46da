package org.bookholder.course;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.bookholder.files.FileNames;
import org.bookholder.script.model.Script;

/**
 * A lesson of a course.
 *
 * @param number its place in the course, from 1
 * @param name what it is called in commands and in names of exports ({@link LessonNames})
 * @param file its script
 * @param script what the file holds
 * @param kind how much there is to edit
 * @param module the module in which it stands, if it stands in one
 */
public record Lesson(
        int number, String name, Path file, Script script, LessonKind kind, Optional<CourseModule> module) {
    private static final Pattern NUMBER = Pattern.compile("\\d{1,6}");

    /** A lesson that stands in no module. */
    public Lesson(int number, Path file, Script script, LessonKind kind) {
        this(number, FileNames.stem(file), file, script, kind, Optional.empty());
    }

    /** That of its file: a hash of every word of its script would cost more than all that is looked up by it. */
    @Override
    public int hashCode() {
        return file.hashCode();
    }

    /** The same with another script. */
    public Lesson with(Script other) {
        return new Lesson(number, name, file, other, kind, module);
    }

    /** The title. */
    public String title() {
        return script.title();
    }

    /** Whether it has a title of its own, and not only the name of its file. */
    public boolean isTitled() {
        return !title().equals(FileNames.stem(file));
    }

    /** Whether a person may mean this lesson: by its name, file or title, or by a number. */
    boolean isCalled(String said) {
        return isNamed(said) || title().equalsIgnoreCase(said) || isNumbered(said);
    }

    /** Whether this is its name, or the name of its file. */
    boolean isNamed(String said) {
        return name.equalsIgnoreCase(said) || String.valueOf(file.getFileName()).equalsIgnoreCase(said);
    }

    /** Whether this is its place in the course, or the first or last number in the name of its file. */
    private boolean isNumbered(String said) {
        if (!NUMBER.matcher(said).matches()) {
            return false;
        }
        List<Integer> numbers = NUMBER.matcher(FileNames.stem(file))
                .results()
                .map(found -> Integer.valueOf(found.group()))
                .toList();
        int wanted = Integer.parseInt(said);
        return number == wanted
                || (!numbers.isEmpty() && (numbers.get(0) == wanted || numbers.get(numbers.size() - 1) == wanted));
    }

    /** Whether a file has this lesson's name: exactly, or followed by a character that is not a letter or digit. */
    public boolean names(Path export) {
        return LessonNames.begins(export, name);
    }
}
