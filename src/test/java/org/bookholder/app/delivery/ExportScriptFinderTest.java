package org.bookholder.app.delivery;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class ExportScriptFinderTest {
    @TempDir
    private Path folder;

    @Test
    void findsTheScriptWithTheSameName() throws IOException {
        Path exports = Files.createDirectories(folder.resolve("exports"));
        Files.writeString(folder.resolve("lesson-1.md"), "One.\n");
        Files.writeString(folder.resolve("lesson-11.md"), "Eleven.\n");
        assertThat(ExportScriptFinder.of(exports.resolve("Lesson-1_v2.mp4"))).contains(folder.resolve("lesson-1.md"));
        assertThat(ExportScriptFinder.of(exports.resolve("lesson-11.mp4"))).contains(folder.resolve("lesson-11.md"));
        assertThat(ExportScriptFinder.of(exports.resolve("lesson-12.mp4"))).isEmpty();
    }
}
