package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class HelpTest {
    @TempDir
    private Path folder;

    @Test
    void namesEveryCommand() {
        Program program = new Program(folder);
        assertThat(program.run("--help")).isZero();
        assertThat(program.out()).contains("read", "notes", "demo", "sessions", "bookholder lesson.md", "--no-browser");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "read",
                "notes",
                "demo",
                "sound",
                "check",
                "sessions",
                "limits",
                "script",
                "time",
                "course",
                "plan"
            })
    void explainsEachCommand(String command) {
        Program program = new Program(folder);
        assertThat(program.run(command, "--help")).isZero();
        assertThat(program.out()).contains("Usage: bookholder " + command);
        assertThat(program.err()).isEmpty();
    }

    @Test
    void aFolderThatIsCalledLikeACommandIsOpenedByALongerName() throws IOException {
        Files.createDirectories(folder.resolve("film"));
        assertThat(Main.folder("film", folder)).isEqualTo("; to open the folder 'film' write ./film");
        assertThat(Main.folder("read", folder)).isEmpty();
    }

    @Test
    void tellsItsVersion() {
        Program program = new Program(folder);
        assertThat(program.run("--version")).isZero();
        assertThat(program.out()).startsWith("Bookholder ");
    }

    @Test
    void listsMicrophones() {
        Program program = new Program(folder);
        assertThat(program.run("read", "--list-microphones")).isZero();
        assertThat(program.out()).isEqualTo("No microphone was found.\n");
    }
}
