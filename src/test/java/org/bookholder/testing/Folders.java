package org.bookholder.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;

/** Folders of tests. */
public final class Folders {
    private Folders() {}

    /** Deletes a folder with all that is in it, also while a program puts small files there and takes them away. */
    public static void delete(Path folder) throws IOException {
        while (Files.exists(folder)) {
            try (Stream<Path> all = Files.walk(folder)) {
                for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                    Files.deleteIfExists(path);
                }
            } catch (DirectoryNotEmptyException | UncheckedIOException comesAndGoes) {
                Thread.onSpinWait();
            }
        }
    }
}
