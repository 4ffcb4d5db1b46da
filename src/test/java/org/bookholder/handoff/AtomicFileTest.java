package org.bookholder.handoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class AtomicFileTest {
    @TempDir
    private Path folder;

    @Test
    void writesTheWholeTextInUtf8() throws IOException {
        Path file = folder.resolve("list.txt");
        new AtomicFile().write(file, out -> out.append("Ærø \uD83D\uDEB2\n"));
        assertThat(Files.readString(file)).isEqualTo("Ærø \uD83D\uDEB2\n");
        assertThat(folder.toFile().list()).containsExactly("list.txt");
    }

    @Test
    void replacesAFile() throws IOException {
        Path file = Files.writeString(folder.resolve("list.txt"), "old");
        new AtomicFile().write(file, out -> out.append("new"));
        assertThat(file).hasContent("new");
    }

    @Test
    void leavesTheOldFileWhenTheTextCannotBeWritten() throws IOException {
        Path file = Files.writeString(folder.resolve("list.txt"), "old");
        assertThatThrownBy(() -> new AtomicFile().write(file, out -> {
                    out.append("half");
                    throw new IOException("no room");
                }))
                .hasMessage("no room");
        assertThat(file).hasContent("old");
        assertThat(folder.toFile().list()).containsExactly("list.txt");
    }

    @Test
    void leavesTheOldFileWhenTheNewOneCannotTakeItsName() throws IOException {
        Path file = Files.writeString(folder.resolve("list.txt"), "old");
        AtomicFile failing = new AtomicFile((from, to) -> {
            throw new IOException("held by another program");
        });
        assertThatThrownBy(() -> failing.write(file, out -> out.append("new"))).hasMessage("held by another program");
        assertThat(file).hasContent("old");
        assertThat(folder.toFile().list()).containsExactly("list.txt");
    }
}
