package org.bookholder.app.film;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import org.bookholder.app.session.CourseHabits;
import org.bookholder.course.Course;
import org.bookholder.course.CourseReader;
import org.bookholder.files.FileNames;
import org.bookholder.film.format.FilmFormat;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;

/** Where a film goes, and under which name. */
final class FilmPlace {
    /** The folder of a session's films. */
    static final String FOLDER = "film";

    /** Stands after a lesson's name in that of its draft. */
    private static final String DRAFT = "-draft";

    private FilmPlace() {}

    /**
     * The film's file, as it is wanted: if that name is taken it gets another one.
     *
     * @param shelf where it lies if it is a draft for the page
     */
    static Path wanted(FilmRequest request, Path session, FilmPlanning planning, Optional<DraftShelf> shelf) {
        if (request.out().isPresent()) {
            return request.out().get();
        }
        String name = name(planning.lesson(), planning.script());
        String ending = "." + planning.format().container();
        return shelf.map(drafts -> drafts.folder().resolve(name + DRAFT + ending))
                .orElseGet(() -> folder(request, session, planning.script()).resolve(name + ending));
    }

    /**
     * The folder of a finished film: beside the lessons, with a course.yaml or without; in the session if the lesson's file is gone or
     * lies on a card or share that can only be read.
     */
    static Path folder(FilmRequest request, Path session, Optional<Path> script) {
        Optional<Path> named = request.out()
                .flatMap(out -> Optional.ofNullable(out.toAbsolutePath().getParent()));
        return named.or(() -> script.map(CourseHabits::courseOf)
                        .map(Course::exportsIn)
                        .filter(FilmPlace::canBeWritten))
                .orElse(session.resolve(FOLDER));
    }

    /** That the name that somebody gave it is none for a film of that kind, if so. */
    static Optional<ProblemException> wrongEnding(FilmRequest request, FilmFormat format) {
        String ending = format.container();
        return request.out()
                .filter(out -> !String.valueOf(out.getFileName()).endsWith("." + ending))
                .map(out -> new ProblemException(
                        "the film is of the kind " + ending, out.toString(), "name a file that ends in ." + ending));
    }

    private static boolean canBeWritten(Path folder) {
        Path there = Files.isDirectory(folder) ? folder : Objects.requireNonNull(folder.getParent());
        return Files.isWritable(there);
    }

    /** The lesson's name in its course; without its file, its title as delivery profiles take it. */
    static String name(Script lesson, Optional<Path> script) {
        return script.map(CourseReader::nameOf).orElseGet(() -> FileNames.ofTitle(FileNames.plain(lesson.title())));
    }
}
