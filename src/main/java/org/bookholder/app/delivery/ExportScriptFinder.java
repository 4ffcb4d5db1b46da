package org.bookholder.app.delivery;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Finds the script of an export by its name: {@code lesson-1_v2.mp4} is an export of {@code lesson-1.md} in the same
 * folder or the one above.
 */
public final class ExportScriptFinder {
    private static final List<String> ENDINGS = List.of(".md", ".markdown", ".txt", ".docx");

    private ExportScriptFinder() {}

    public static Optional<Path> of(Path export) {
        Path folder = export.toAbsolutePath().getParent();
        Path above = folder == null ? null : folder.getParent();
        return Stream.of(Optional.ofNullable(folder), Optional.ofNullable(above))
                .flatMap(Optional::stream)
                .map(place -> in(place, stem(export)))
                .flatMap(Optional::stream)
                .findFirst();
    }

    /** The script with the longest name with which the export's name begins. */
    private static Optional<Path> in(Path folder, String name) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(Files::isRegularFile)
                    .filter(file -> ENDINGS.stream().anyMatch(lower(file)::endsWith))
                    .filter(file -> belongs(stem(file), name))
                    .max(Comparator.comparingInt((Path file) -> stem(file).length())
                            .thenComparing(Comparator.reverseOrder()));
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /**
     * Whether the export's name really refers to the script: what follows must not continue the script's last number or
     * word.
     */
    private static boolean belongs(String script, String export) {
        return export.startsWith(script)
                && (export.length() == script.length() || !Character.isLetterOrDigit(export.charAt(script.length())));
    }

    private static String stem(Path file) {
        return lower(file).replaceFirst("\\.[^.]*$", "");
    }

    private static String lower(Path file) {
        return String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
    }
}
