package org.bookholder.app.home;

import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.app.environment.Environment;
import org.bookholder.problem.ProblemException;

/**
 * The files and folders that the page may name: those below the user's home that are not hidden, and all in the folders of
 * sessions, courses and the demo. A link that leads out of them counts as outside. Safe for use by several threads.
 */
final class AllowedPaths {
    private final FolderList folders;
    private final Environment here;
    private final KnownCourses courses;

    AllowedPaths(FolderList folders, Environment here, KnownCourses courses) {
        this.folders = folders;
        this.here = here;
        this.courses = courses;
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

    private boolean inside(Path path) throws ProblemException {
        List<Path> open = new ArrayList<>(List.of(here.sessions(), here.demoScripts()));
        courses.all().forEach(course -> open.add(Path.of(course.folder())));
        return open.stream().anyMatch(folder -> below(folder, path)) || folders.holds(path);
    }

    private static boolean below(Path folder, Path path) {
        try {
            return path.startsWith(folder.toRealPath());
        } catch (IOException notThere) {
            return false;
        }
    }
}
