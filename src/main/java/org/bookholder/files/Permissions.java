package org.bookholder.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Optional;
import java.util.Set;

/**
 * Who may read and change a file, on a system that keeps it as POSIX does.
 *
 * @param allowed what is allowed
 */
public record Permissions(Set<PosixFilePermission> allowed) {
    /** Those of a file; empty if there is no such file, or the system keeps none. */
    public static Optional<Permissions> of(Path file) {
        try {
            return Optional.of(new Permissions(Files.getPosixFilePermissions(file)));
        } catch (IOException | UnsupportedOperationException unknown) {
            return Optional.empty();
        }
    }

    /** Gives them to a file; one that has them already is left alone, since some disks refuse any change. */
    public void give(Path file) throws IOException {
        if (!Files.getPosixFilePermissions(file).equals(allowed)) {
            Files.setPosixFilePermissions(file, allowed);
        }
    }
}
