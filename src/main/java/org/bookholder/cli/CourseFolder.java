package org.bookholder.cli;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Parameters;

/** The course that a command is about. */
final class CourseFolder {
    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "FOLDER",
            description = "The course's folder. Default: the one you are in.")
    private @Nullable Path path;

    Path path() {
        return path == null ? Path.of(".") : path;
    }
}
