package org.bookholder.course;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A course as its author described it.
 *
 * @param folder its folder
 * @param title its title
 * @param modules its modules in order; none if its lessons stand in none
 * @param lessons in order, at least one, each with a name of its own
 * @param unreadable the lessons that can't be read; none unless they were to be left out
 * @param remarks what else in its folder is left out, though it looks like a part of it, and what to do; one line each
 * @param shooting how it will be recorded
 * @param editing how it will be edited
 * @param delivery the delivery profile that exports are checked against; empty for the usual one
 * @param costs costs and income, if given
 * @param launch the hoped-for launch day, if one is given
 */
public record Course(
        Path folder,
        String title,
        List<CourseModule> modules,
        List<Lesson> lessons,
        List<UnreadableLesson> unreadable,
        List<String> remarks,
        Shooting shooting,
        Editing editing,
        Optional<Path> delivery,
        Optional<Costs> costs,
        Optional<LocalDate> launch) {
    /** The file that describes the course. */
    public static final String FILE = "course.yaml";

    /** The folder in it for exported files. */
    static final String EXPORTS = "exports";

    /** The folder in it for sessions. */
    public static final String SESSIONS = "sessions";

    /** Copies the lists. */
    public Course {
        modules = List.copyOf(modules);
        lessons = List.copyOf(lessons);
        unreadable = List.copyOf(unreadable);
        remarks = List.copyOf(remarks);
    }

    /** The same course with other lessons. */
    public Course with(List<Lesson> other) {
        return new Course(
                folder, title, modules, other, unreadable, remarks, shooting, editing, delivery, costs, launch);
    }

    /** The folder of the course's own sessions. */
    public Path sessions() {
        return folder.resolve(SESSIONS);
    }

    /** The folder of the exported files. */
    public Path exports() {
        return exportsIn(folder);
    }

    /** The folder of the exported files of the course in a folder. */
    public static Path exportsIn(Path folder) {
        return folder.resolve(EXPORTS);
    }

    /** The lessons that stand in a module, in order; those that stand in none if it is empty. */
    public List<Lesson> in(Optional<CourseModule> module) {
        return lessons.stream().filter(lesson -> lesson.module().equals(module)).toList();
    }

    /** The lesson that an exported file belongs to, by the file's name; the longest matching name wins. */
    public Optional<Lesson> lessonOf(Path export) {
        return lessons.stream()
                .filter(lesson -> lesson.names(export))
                .max(Comparator.comparingInt(lesson -> lesson.name().length()));
    }

    /** The lesson of that name; empty if there is none. */
    public Optional<Lesson> lesson(String name) {
        return lessons.stream().filter(lesson -> lesson.name().equals(name)).findFirst();
    }

    /**
     * The lessons that a person may mean: those of that name, file, title, place in the course, or number in the name of the file, so that "14"
     * is both the fourteenth lesson and lesson-14.
     */
    public List<Lesson> meant(String said) {
        String plain = said.strip();
        boolean isNumber = plain.matches("\\d+");
        List<Lesson> named = lessons.stream()
                .filter(lesson -> !isNumber && lesson.isNamed(plain))
                .toList();
        return named.isEmpty()
                ? lessons.stream().filter(lesson -> lesson.isCalled(plain)).toList()
                : named;
    }

    /** Why lessons can't be read, and what else is left out, one line each. */
    public List<String> why() {
        return Stream.concat(unreadable.stream().map(UnreadableLesson::why), remarks.stream())
                .toList();
    }
}
