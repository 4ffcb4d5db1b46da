package org.bookholder.files;

import java.nio.file.Path;

/** Parts of files' names. */
public final class FileNames {
    private FileNames() {}

    /** A file's name without its ending; a dot at its very beginning begins no ending. */
    public static String stem(Path file) {
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }
}
