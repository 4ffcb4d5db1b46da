package org.bookholder.app.work;

import java.nio.file.Path;
import java.util.List;

/** Names of files for people. */
final class Names {
    private Names() {}

    /** The name of a file or folder, without its path. */
    static String of(Path path) {
        return path.getFileName() == null ? path.toString() : path.getFileName().toString();
    }

    /** The first name, and how many there are besides. */
    static String of(List<Path> paths) {
        String first = of(paths.get(0));
        return paths.size() == 1 ? first : first + " and " + (paths.size() - 1) + " more";
    }
}
