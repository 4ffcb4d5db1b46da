package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.testing.ChildJvm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Names with accents in a locale without them; only on Linux does the Java virtual machine use the locale for file names. */
@EnabledOnOs(value = OS.LINUX, disabledReason = "only there does Java take the locale for file names")
final class FileNamesTest {
    private static final String REMEDY = ": a file or folder with this name cannot be opened or made in this locale"
            + " (ANSI_X3.4-1968); set LC_ALL=C.UTF-8 and start again, or rename it";

    @TempDir
    private Path folder;

    @Test
    void anArgumentWithAccentsGetsOneLine() throws IOException, InterruptedException {
        assertThat(run("exec \"$@\" \"$FOLDER/caf\u00e9.md\"", "time"))
                .containsExactly("bookholder: " + folder + "/caf\ufffd\ufffd.md" + REMEDY, "exit status 2");
    }

    @Test
    void aFolderOfTheUsersWithAccentsGetsOneLine() throws IOException, InterruptedException {
        assertThat(run("export XDG_DATA_HOME=\"$FOLDER/donn\u00e9es\"; exec \"$@\"", "limits"))
                .containsExactly("bookholder: " + folder + "/donn\ufffd\ufffdes" + REMEDY, "exit status 2");
    }

    @Test
    void theWorkingFolderWithAccentsGetsOneLine() throws IOException, InterruptedException {
        assertThat(run("mkdir \"$FOLDER/\u00e9\" && cd \"$FOLDER/\u00e9\" && exec \"$@\"", "limits"))
                .containsExactly("bookholder: " + folder + "/\ufffd\ufffd" + REMEDY, "exit status 2");
    }

    @Test
    void aFileThatWouldBeNamedWithAccentsGetsOneLine() throws IOException, InterruptedException {
        Program program = new Program(folder);
        String script = program.file("a.md", "---\ntitle: \u00c9t\u00e9\n---\nHello.\n");
        String session = program.path("session");
        String sound = program.recording("a.wav", 1);
        assertThat(program.read(script, sound, session)).isZero();

        List<String> said = run("exec \"$@\"", "handoff", session, "--out", program.path("out"));

        assertThat(said).hasSize(2).last().isEqualTo("exit status 2");
        assertThat(said.get(0)).startsWith("bookholder: \u00e9t\u00e9").endsWith(REMEDY);
    }

    private List<String> run(String command, String... arguments) throws IOException, InterruptedException {
        // The text of the command itself is passed in a file: its accents would be lost on the way.
        Path script = Files.writeString(folder.resolve("run.sh"), command + "\n");
        List<String> inC = List.of("env", "LC_ALL=C", "FOLDER=" + folder, "sh", script.toString());
        try (ChildJvm child = ChildJvm.startBy(inC, Main.class, arguments)) {
            return child.untilItEnds();
        }
    }
}
