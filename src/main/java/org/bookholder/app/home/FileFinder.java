package org.bookholder.app.home;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.problem.ProblemException;

/**
 * Finds a file that was dropped on the page: a browser tells its name and size, and not where it lies. So it need not be
 * copied, and a film may be large.
 *
 * @param most how many folders are looked through at most
 */
record FileFinder(int most) {
    /** Looks through as many folders as takes a few seconds at most on a slow disk. */
    static final FileFinder USUAL = new FileFinder(20_000);

    /**
     * The file of that name and size, the one nearest to the first of the places; hidden folders and links are left out.
     *
     * @throws ProblemException if there is none
     */
    Path find(String name, long size, List<Path> places) throws ProblemException {
        int left = most;
        for (Path place : places) {
            Deque<Path> folders = new ArrayDeque<>(List.of(place));
            while (!folders.isEmpty() && left > 0) {
                left--;
                List<Path> entries = entries(folders.removeFirst());
                Optional<Path> found = entries.stream()
                        .filter(entry -> name.equals(String.valueOf(entry.getFileName()))
                                && entry.toFile().length() == size)
                        .filter(entry -> Files.isRegularFile(entry, LinkOption.NOFOLLOW_LINKS))
                        .findFirst();
                if (found.isPresent()) {
                    return found.get();
                }
                entries.stream()
                        .filter(entry -> Files.isDirectory(entry, LinkOption.NOFOLLOW_LINKS))
                        .forEach(folders::addLast);
            }
        }
        throw new ProblemException(
                "this file was not found in your course or below your home", name, "choose it by the button");
    }

    /** A folder that can't be read has no entries. */
    private static List<Path> entries(Path folder) {
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(entry -> !String.valueOf(entry.getFileName()).startsWith("."))
                    .sorted()
                    .toList();
        } catch (IOException | UncheckedIOException e) {
            return List.of();
        }
    }
}
