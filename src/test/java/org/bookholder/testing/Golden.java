package org.bookholder.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Compares text with a file under src/test/resources/golden; {@code -Dgolden.update=true} rewrites the file. */
public final class Golden {
    private static final Path ROOT = Path.of("src/test/resources/golden");

    private Golden() {}

    public static void assertMatches(String name, String actual) {
        Path file = ROOT.resolve(name);
        try {
            if (Boolean.getBoolean("golden.update")) {
                Files.createDirectories(file.getParent());
                Files.writeString(file, actual);
            }
            assertEquals(
                    Files.readString(file), actual, () -> file + " differs; rerun with -Dgolden.update=true if meant");
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the golden file " + file, e);
        }
    }
}
