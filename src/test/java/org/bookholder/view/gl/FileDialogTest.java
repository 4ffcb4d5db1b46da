package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class FileDialogTest {
    @TempDir
    private Path folder;

    @Test
    void severalPathsAreToldApartAlsoIfANameHoldsABar() throws Exception {
        Path one = Files.createFile(folder.resolve("one.mp4"));
        Path bar = Files.createFile(folder.resolve("take 1|2.mp4"));
        Path last = Files.createFile(folder.resolve("last.mp4"));
        assertThat(FileDialog.paths(one + "|" + bar + "|" + last)).containsExactly(one, bar, last);
        assertThat(FileDialog.paths(bar.toString())).containsExactly(bar);
    }

    @Test
    void aDialogThatWasClosedGivesNothing() {
        assertThat(FileDialog.paths(null)).isEmpty();
        assertThat(FileDialog.paths("")).isEmpty();
        assertThat(FileDialog.paths(folder.resolve("gone.mp4").toString())).isEmpty();
    }
}
