package org.bookholder.course;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.bookholder.files.DiskProblems;
import org.bookholder.problem.ProblemException;

/** The files that were exported for a course, told apart by the endings of their names. */
public final class ExportFiles {
    private static final Pattern FILM = Pattern.compile("(?i)\\.(mp4|m4v|mov|mkv|webm|mxf|avi|mpg|ts)$");

    private ExportFiles() {}

    /** Whether a file's name is that of a film. */
    public static boolean isFilm(Path file) {
        return FILM.matcher(file.toString()).find();
    }

    /**
     * The files of a folder that are wanted, by name; none if the folder is not there.
     *
     * @throws ProblemException if it cannot be read
     */
    public static List<Path> in(Path folder, Predicate<Path> wanted) throws ProblemException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.filter(file -> Files.isRegularFile(file) && wanted.test(file))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new ProblemException("the exports cannot be read", folder.toString(), "check its permissions", e);
        }
    }

    /**
     * When a file was written last.
     *
     * @throws ProblemException if that cannot be read
     */
    public static Instant made(Path file) throws ProblemException {
        try {
            return Files.getLastModifiedTime(file).toInstant();
        } catch (IOException e) {
            throw DiskProblems.reading(file, e);
        }
    }
}
