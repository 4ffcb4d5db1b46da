package org.bookholder.app.home;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.bookholder.app.environment.Environment;
import org.bookholder.problem.ProblemException;

/**
 * The files and folders that the page may name: those below the user's home that are not hidden, and all in the folders of
 * sessions, courses and the demo, and what the owner has chosen in the system's dialog. A link that leads out of them counts as outside.
 * Safe for use by several threads.
 */
final class AllowedPaths {
    private static final int MOST_CHOSEN = 1000;

    private final FolderList folders;
    private final Environment here;
    private final KnownCourses courses;
    private final Set<Path> chosen = new LinkedHashSet<>();

    AllowedPaths(FolderList folders, Environment here, KnownCourses courses) {
        this.folders = folders;
        this.here = here;
        this.courses = courses;
    }

    /** Where the user's own folders lie. */
    Path userHome() {
        return folders.userHome();
    }

    /**
     * The file or folder of a path, by its real path.
     *
     * @throws ProblemException if there is none, or the page may not name it
     */
    Path path(String text) throws ProblemException {
        Path path;
        try {
            path = Path.of(text).toRealPath();
        } catch (IOException | InvalidPathException e) {
            throw new ProblemException("there is no such file or folder", text, "choose another one", e);
        }
        if (!inside(path)) {
            throw new ProblemException(
                    "this is outside of your home and of your courses",
                    text,
                    "choose something below " + folders.userHome());
        }
        return path;
    }

    /** From now on the page may name these, and what lies in those that are folders. */
    synchronized void admit(List<Path> paths) {
        for (Path path : paths) {
            try {
                chosen.add(path.toRealPath());
            } catch (IOException goneAgain) {
                // It can't be read later, either.
            }
            if (chosen.size() > MOST_CHOSEN) {
                chosen.remove(chosen.iterator().next());
            }
        }
    }

    private synchronized boolean isChosen(Path path) {
        return chosen.stream().anyMatch(path::startsWith);
    }

    /**
     * A folder below the user's home or chosen in the system's dialog, by its real path.
     *
     * @throws ProblemException if it is none
     */
    Path folder(String text) throws ProblemException {
        try {
            Path folder = Path.of(text).toRealPath();
            if (Files.isDirectory(folder) && isChosen(folder)) {
                return folder;
            }
        } catch (IOException | InvalidPathException e) {
            // The list says what is wrong with it.
        }
        return folders.allowed(text);
    }

    private boolean inside(Path path) throws ProblemException {
        List<Path> open = new ArrayList<>(List.of(here.sessions(), here.demoScripts()));
        courses.all().forEach(course -> open.add(Path.of(course.folder())));
        return open.stream().anyMatch(folder -> below(folder, path)) || isChosen(path) || folders.holds(path);
    }

    private static boolean below(Path folder, Path path) {
        try {
            return path.startsWith(folder.toRealPath());
        } catch (IOException notThere) {
            return false;
        }
    }
}
