package org.bookholder.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.FailingDisk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class AtomicFilesTest {
    @TempDir
    private Path folder;

    private final AtomicFiles files = new AtomicFiles(Access.OWNER);

    @Test
    void writesTheWholeTextInUtf8() throws IOException {
        Path file = folder.resolve("list.txt");
        files.write(file, "Ærø \uD83D\uDEB2\n");
        assertThat(Files.readString(file)).isEqualTo("Ærø \uD83D\uDEB2\n");
        assertThat(folder.toFile().list()).containsExactly("list.txt");
    }

    @Test
    void replacesAFile() throws IOException {
        Path file = Files.writeString(folder.resolve("list.txt"), "old, and longer");
        files.write(file, "new");
        assertThat(file).hasContent("new");
    }

    @Test
    void onlyTheOwnerMayReadAFile() throws IOException {
        Path file = Files.writeString(folder.resolve("list.txt"), "readable by all");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r--r--"));
        files.write(file, "private");
        assertThat(permissions(file)).isEqualTo("rw-------");
    }

    @Test
    void onlyTheOwnerMayReadItWhileItIsWritten() throws Exception {
        files.writeAll(Map.of(
                folder.resolve("list.txt"),
                out -> assertThat(folder.toFile().listFiles())
                        .singleElement()
                        .satisfies(
                                draft -> assertThat(permissions(draft.toPath())).isEqualTo("rw-------"))));
    }

    @Test
    void aFileOfTheUsersKeepsItsPermissions() throws IOException {
        AtomicFiles kept = new AtomicFiles(Access.KEPT);
        Path plain = Files.createFile(folder.resolve("plain"));
        Path fresh = folder.resolve("fresh");
        kept.write(fresh, "text");
        assertThat(permissions(fresh)).isEqualTo(permissions(plain));
        for (String mode : List.of("rw-rw-r--", "rw-------", "r--r--r--")) {
            Files.setPosixFilePermissions(plain, PosixFilePermissions.fromString(mode));
            kept.write(plain, mode);
            assertThat(plain).content().isEqualTo(mode);
            assertThat(permissions(plain)).isEqualTo(mode);
        }
    }

    @Test
    void aFileToGiveAwayHasDefaultPermissions() throws IOException {
        Path plain = Files.createFile(folder.resolve("plain"));
        Path given = folder.resolve("given");
        new AtomicFiles(Access.SYSTEM_DEFAULT).write(given, "text");
        assertThat(permissions(given)).isEqualTo(permissions(plain));
    }

    @Test
    void forcesTheFileBeforeTheRenameAndTheFolderAfterIt() throws IOException {
        FailingDisk disk = new FailingDisk(step -> false);
        new AtomicFiles(disk, Access.OWNER).write(folder.resolve("list.txt"), "text");
        assertThat(disk.steps())
                .containsExactly("create 1", "write 1", "close 1", "force 1", "move 1", "forceFolder 1", "delete 1");
    }

    @ParameterizedTest
    @ValueSource(strings = {"create 1", "write 1", "close 1", "force 1", "move 1"})
    void leavesTheOldFileWhenAStepFails(String failing) throws IOException {
        Path file = Files.writeString(folder.resolve("list.txt"), "old");
        AtomicFiles broken = new AtomicFiles(new FailingDisk(failing::equals), Access.OWNER);
        assertThatThrownBy(() -> broken.write(file, "new")).hasMessage("no " + failing);
        assertThat(file).hasContent("old");
        assertThat(folder.toFile().list()).containsExactly("list.txt");
    }

    @Test
    void theNewFileIsCompleteIfItsFolderCannotBeForced() throws IOException {
        Path file = Files.writeString(folder.resolve("list.txt"), "old");
        AtomicFiles broken = new AtomicFiles(new FailingDisk("forceFolder 1"::equals), Access.OWNER);
        assertThatThrownBy(() -> broken.write(file, "new")).hasMessage("no forceFolder 1");
        assertThat(file).hasContent("new");
        assertThat(folder.toFile().list()).containsExactly("list.txt");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"create 3", "write 2", "close 3", "force 1", "keepAs 1", "keepAs 2", "move 1", "move 2", "move 3"
            })
    void leavesAllFilesWhenAStepFailsForOne(String failing) throws Exception {
        Files.writeString(folder.resolve("a"), "old a");
        Files.writeString(folder.resolve("c"), "old c");
        Map<Path, Content> three = new LinkedHashMap<>();
        for (String name : List.of("a", "b", "c")) {
            three.put(folder.resolve(name), out -> out.write(("new " + name).getBytes(StandardCharsets.UTF_8)));
        }
        assertThatThrownBy(() -> new AtomicFiles(new FailingDisk(failing::equals), Access.OWNER).writeAll(three))
                .hasMessage("no " + failing);
        assertThat(folder.toFile().list()).containsExactlyInAnyOrder("a", "c");
        assertThat(folder.resolve("a")).hasContent("old a");
        assertThat(folder.resolve("c")).hasContent("old c");

        files.writeAll(three);
        assertThat(folder.toFile().list()).containsExactlyInAnyOrder("a", "b", "c");
        assertThat(folder.resolve("c")).hasContent("new c");
    }

    @Test
    void leavesTheOldFileWhenItsContentCannotBeRead() throws IOException {
        Path file = Files.writeString(folder.resolve("list.txt"), "old");
        ProblemException problem = new ProblemException("is damaged", "take 1", "record it again");
        assertThatThrownBy(() -> files.writeAll(Map.of(file, out -> {
                    out.write('n');
                    throw problem;
                })))
                .isSameAs(problem);
        assertThat(file).hasContent("old");
        assertThat(folder.toFile().list()).containsExactly("list.txt");
    }

    @Test
    void writesTheFileThatALinkLeadsTo() throws IOException {
        Path file = Files.writeString(folder.resolve("kept elsewhere"), "old");
        Path link = Files.createSymbolicLink(folder.resolve("settings"), file.getFileName());
        files.write(link, "new");
        assertThat(link).isSymbolicLink();
        assertThat(file).hasContent("new");
    }

    @Test
    void writesAFileOfTheLongestName() throws IOException {
        Path file = folder.resolve("\u30ec".repeat(85));
        files.write(file, "text");
        assertThat(file).hasContent("text");
    }

    private static String permissions(Path file) throws IOException {
        assumeTrue(file.getFileSystem().supportedFileAttributeViews().contains("posix"), "needs POSIX permissions");
        return PosixFilePermissions.toString(Files.getPosixFilePermissions(file));
    }
}
