package org.bookholder.app.course;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bookholder.course.CourseFile;
import org.bookholder.course.CourseModule;
import org.bookholder.course.CourseReader;
import org.bookholder.course.LessonNames;
import org.bookholder.course.ModuleEdit;
import org.bookholder.problem.ProblemException;

/**
 * Changes the modules of a course, which are named as people do: by their titles or numbers. Used by one thread at a time.
 *
 * @param folder the course's folder
 */
public record ModuleChanges(Path folder) {
    private static final String NONE = "none";

    /** Adds a module without lessons behind the others. */
    public void add(String title) throws ProblemException {
        edit().add(title);
    }

    /** Gives a module another title. */
    public void rename(String module, String title) throws ProblemException {
        edit().rename(number(module), title);
    }

    /** Takes away a module that has no lessons. */
    public void remove(String module) throws ProblemException {
        edit().remove(number(module));
    }

    /**
     * Moves a lesson into a module, or to another place in its own.
     *
     * @param lesson its name, title or number
     * @param module the module's title or number; "none" for none
     * @param place the place that it has there afterwards, from 1; the last one if that is larger
     */
    public void move(String lesson, String module, int place) throws ProblemException {
        String script = LessonNames.written(
                folder, new LessonChoice(folder).meant(lesson).file());
        edit().move(script, module.equalsIgnoreCase(NONE) ? 0 : number(module), place - 1);
    }

    private ModuleEdit edit() {
        return new ModuleEdit(new CourseFile(folder));
    }

    private int number(String said) throws ProblemException {
        List<CourseModule> modules = CourseReader.readable(folder).modules();
        String plain = said.strip();
        return Stream.concat(
                        modules.stream().filter(module -> module.title().equalsIgnoreCase(plain)),
                        modules.stream()
                                .filter(module ->
                                        String.valueOf(module.number()).equals(plain)))
                .findFirst()
                .map(CourseModule::number)
                .orElseThrow(() -> new ProblemException(
                        "the course has no module '" + plain + "'",
                        folder.toString(),
                        modules.isEmpty()
                                ? "it has none yet; make one with --add-module TITLE"
                                : "name one of "
                                        + modules.stream()
                                                .map(module -> module.number() + " (" + module.title() + ")")
                                                .collect(Collectors.joining(", "))));
    }
}
