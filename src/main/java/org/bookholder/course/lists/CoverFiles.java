package org.bookholder.course.lists;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import org.bookholder.script.model.Cover;
import org.bookholder.script.model.Script;

/** Finds the pictures and clips that scripts name. */
public final class CoverFiles {
    private CoverFiles() {}

    /** The file of a picture or clip, relative to its script's folder; empty if there is none. */
    public static Optional<Path> of(Script lesson, Cover cover) {
        try {
            Path folder = Objects.requireNonNull(
                    Path.of(lesson.source()).toAbsolutePath().getParent());
            Path plain = folder.resolve(cover.file());
            // Markdown writes a space as %20.
            Path file = Files.isRegularFile(plain) || !cover.file().contains("%")
                    ? plain
                    : folder.resolve(URLDecoder.decode(cover.file().replace("+", "%2B"), StandardCharsets.UTF_8));
            return Files.isRegularFile(file) ? Optional.of(file) : Optional.empty();
        } catch (IllegalArgumentException e) {
            // No name that a file can have: a path or a percent sign that means nothing.
            return Optional.empty();
        }
    }
}
