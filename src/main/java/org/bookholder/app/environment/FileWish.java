package org.bookholder.app.environment;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * What somebody is to choose.
 *
 * @param title what the dialog is headed with
 * @param folder whether it is a folder; otherwise files
 * @param endings the endings of files that can be chosen, without a dot; all if there are none
 * @param several whether more than one file can be chosen
 * @param from the folder to begin in; empty for the system's own choice
 */
public record FileWish(String title, boolean folder, List<String> endings, boolean several, Optional<Path> from) {
    /** Copies the list. */
    public FileWish {
        endings = List.copyOf(endings);
    }
}
