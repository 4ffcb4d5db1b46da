package org.bookholder.files;

import java.nio.file.Path;
import java.text.Normalizer;

/** Parts of files' names. */
public final class FileNames {
    private FileNames() {}

    /** A file's name without its ending; a dot at its very beginning begins no ending. */
    public static String stem(Path file) {
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }

    /** A text reduced to letters a to z without accents, digits, - and _; hyphens stand for the rest. May be empty. */
    public static String plain(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .replaceAll("[^A-Za-z0-9_-]+", "-")
                .replaceAll("^-+|-+$", "");
    }
}
