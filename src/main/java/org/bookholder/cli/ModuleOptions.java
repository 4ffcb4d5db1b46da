package org.bookholder.cli;

import java.nio.file.Path;
import org.bookholder.app.course.ModuleChanges;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Option;

/** Changes of the modules of a course. */
final class ModuleOptions {
    @ArgGroup(exclusive = true)
    private @Nullable Change change;

    @Option(
            names = "--to",
            paramLabel = "MODULE",
            description = "With --move: the module's title or number, or 'none'. With --rename-module: its new title.")
    private @Nullable String to;

    @Option(
            names = "--place",
            paramLabel = "N",
            description = "With --move: the lesson's place in the module, from 1. Default: the last.")
    private @Nullable Integer place;

    /** At most one of these options. */
    static final class Change {
        @Option(
                names = "--move",
                paramLabel = "LESSON",
                description = "Move a lesson, by its name, title or number, into a module, or in its own.")
        private @Nullable String lesson;

        @Option(names = "--add-module", paramLabel = "TITLE", description = "Add a module behind the others.")
        private @Nullable String added;

        @Option(
                names = "--rename-module",
                paramLabel = "MODULE",
                description = "Give a module, by its title or number, another title.")
        private @Nullable String renamed;

        @Option(names = "--remove-module", paramLabel = "MODULE", description = "Take away a module without lessons.")
        private @Nullable String removed;
    }

    /** Does what was asked for, if anything was. */
    void apply(Path folder) throws ProblemException {
        String lesson = change == null ? null : change.lesson;
        String added = change == null ? null : change.added;
        String renamed = change == null ? null : change.renamed;
        String removed = change == null ? null : change.removed;
        boolean needsTo = lesson != null || renamed != null;
        if (needsTo != (to != null)) {
            throw new ProblemException(
                    needsTo ? "it is not said where to, or how it is to be called" : "nothing is moved or renamed",
                    "--to",
                    "give it with --move LESSON or --rename-module MODULE");
        }
        if (place != null && (lesson == null || place < 1)) {
            throw new ProblemException(
                    lesson == null ? "no lesson is moved that could have it" : "places are counted from 1",
                    "--place",
                    "give it with --move LESSON, and a whole number from 1");
        }
        ModuleChanges modules = new ModuleChanges(folder);
        if (lesson != null && to != null) {
            modules.move(lesson, to, place == null ? Integer.MAX_VALUE : place);
        } else if (added != null) {
            modules.add(added);
        } else if (renamed != null && to != null) {
            modules.rename(renamed, to);
        } else if (removed != null) {
            modules.remove(removed);
        }
    }
}
