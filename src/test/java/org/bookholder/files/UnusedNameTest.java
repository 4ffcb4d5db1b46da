package org.bookholder.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class UnusedNameTest {
    @TempDir
    private Path folder;

    @Test
    void theWantedNameIsTakenIfItIsFree() throws IOException {
        Path name = UnusedName.move(finished(), folder.resolve("lesson.mp4"));
        assertThat(name).isEqualTo(folder.resolve("lesson.mp4")).hasContent("film");
        assertThat(folder.resolve("work")).doesNotExist();
    }

    @Test
    void nothingIsReplacedAndTheNextFreeNumberIsTaken() throws IOException {
        Files.writeString(folder.resolve("lesson.mp4"), "first");
        Files.writeString(folder.resolve("lesson-2.mp4"), "second");
        Path name = UnusedName.move(finished(), folder.resolve("lesson.mp4"));
        assertThat(name).isEqualTo(folder.resolve("lesson-3.mp4")).hasContent("film");
        assertThat(folder.resolve("lesson.mp4")).hasContent("first");
    }

    private Path finished() throws IOException {
        return Files.writeString(folder.resolve("work"), "film");
    }
}
