package org.bookholder.handoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.FailingDisk;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class HandOffWriterTest {
    private static final List<HandOffFile> TWO = List.of(file("a.vtt", "new a"), file("b.edl", "new b"));

    @TempDir
    private Path parent;

    private Path folder;

    @BeforeEach
    void nameAFolderThatIsHardToName() {
        folder = parent.resolve("L'\u00e9t\u00e9 \"\u30ec\u30c3\u30b9\u30f3\" 1");
    }

    @Test
    void writesEveryFileIntoANewFolder() throws Exception {
        assertThat(new HandOffWriter().write(folder, TWO, false))
                .containsExactly(folder.resolve("a.vtt"), folder.resolve("b.edl"));
        assertThat(folder.resolve("b.edl")).hasContent("new b");
        assertThat(folder.toFile().list()).containsExactlyInAnyOrder("a.vtt", "b.edl");
    }

    @Test
    void filesAreAsReadableAsTheFolderWants() throws Exception {
        Path plain = Files.createFile(parent.resolve("plain"));
        new HandOffWriter().write(folder, TWO, false);
        assertThat(Files.getPosixFilePermissions(folder.resolve("a.vtt")))
                .isEqualTo(Files.getPosixFilePermissions(plain));
    }

    @Test
    void changesNothingIfOneFileExists() throws Exception {
        Files.createDirectories(folder);
        Files.writeString(folder.resolve("b.edl"), "old b");
        assertThatThrownBy(() -> new HandOffWriter().write(folder, TWO, false))
                .isInstanceOf(ProblemException.class)
                .hasMessage(folder.resolve("b.edl")
                        + ": the file is there already, and nothing was written; choose another folder, or choose to "
                        + "replace what is there");
        assertThat(folder.toFile().list()).containsExactly("b.edl");
        assertThat(folder.resolve("b.edl")).hasContent("old b");
    }

    @Test
    void replacesFilesIfAsked() throws Exception {
        Files.createDirectories(folder);
        Files.writeString(folder.resolve("b.edl"), "old b");
        new HandOffWriter().write(folder, TWO, true);
        assertThat(folder.resolve("b.edl")).hasContent("new b");
    }

    @Test
    void leavesEverythingAsItIsIfOneFileCannotBeWritten() throws Exception {
        Files.createDirectories(folder);
        Files.writeString(folder.resolve("a.vtt"), "old a");
        HandOffFile half = HandOffFile.text("b.edl", out -> {
            out.append("half");
            throw new IOException("No space left on device");
        });
        assertThatThrownBy(() -> new HandOffWriter().write(folder, List.of(TWO.get(0), half), true))
                .hasMessage(folder
                        + ": the hand-off cannot be written (No space left on device); choose a folder that"
                        + " can be written and has room");
        assertThat(folder.resolve("a.vtt")).hasContent("old a");
        assertThat(folder.toFile().list()).containsExactly("a.vtt");
    }

    @Test
    void leavesNoTemporaryFileIfARenameFails() throws Exception {
        HandOffWriter failing = new HandOffWriter(new FailingDisk("move 1"::equals));
        Files.createDirectories(folder);
        assertThatThrownBy(() -> failing.write(folder, TWO, false)).hasMessageContaining("no move 1");
        assertThat(folder.toFile().list()).isEmpty();
    }

    @Test
    void leavesNoFolderThatWasMadeForNothing() throws Exception {
        HandOffWriter failing = new HandOffWriter(new FailingDisk("move 1"::equals));
        Path inner = folder.resolve("of/today");
        assertThatThrownBy(() -> failing.write(inner, TWO, false)).hasMessageContaining("no move 1");
        assertThat(folder).doesNotExist();
        assertThat(parent).isDirectory();
    }

    @Test
    void restoresTheFirstFileIfTheSecondRenameFails() throws Exception {
        Files.createDirectories(folder);
        Files.writeString(folder.resolve("a.vtt"), "old a");
        HandOffWriter failing = new HandOffWriter(new FailingDisk("move 2"::equals));
        assertThatThrownBy(() -> failing.write(folder, TWO, true)).hasMessageContaining("no move 2");
        assertThat(folder.resolve("a.vtt")).hasContent("old a");
        assertThat(folder.toFile().list()).containsExactly("a.vtt");
    }

    @Test
    void saysThatTheFolderIsAFile() throws Exception {
        Files.writeString(folder, "a file");
        assertThatThrownBy(() -> new HandOffWriter().write(folder, TWO, false))
                .isInstanceOf(ProblemException.class)
                .hasMessageStartingWith(folder + ": the hand-off cannot be written (");
        assertThat(folder).hasContent("a file");
    }

    private static HandOffFile file(String name, String text) {
        return HandOffFile.text(name, out -> out.append(text));
    }
}
