package org.bookholder.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.bookholder.testing.ChildJvm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

final class RunFolderTest {
    @TempDir
    private Path parent;

    @Test
    void isDeletedWithAllThatIsInItWhenItIsClosed() throws IOException {
        try (RunFolder run = RunFolder.create(parent)) {
            Files.createDirectories(run.path().resolve("model/conf"));
            Files.writeString(run.path().resolve("model/conf/x"), "x");
            assertThat(parent).isNotEmptyDirectory();
        }
        assertThat(parent).isEmptyDirectory();
    }

    @Test
    void anUnreadableFolderDoesNotKeepTheProgramFromRunning() throws IOException {
        try (RunFolder run = RunFolder.create(parent)) {
            run.deleteLeftOver(parent.resolve("none"));
            assertThat(run.path()).exists();
        }
    }

    @Test
    void leftoversOfAKillAreDeletedButFoldersInUseAreNot() throws IOException, InterruptedException {
        try (RunFolder first = RunFolder.create(parent);
                ChildJvm killed = ChildJvm.start(Holding.class, parent.toString());
                ChildJvm living = ChildJvm.start(Holding.class, parent.toString())) {
            Path left = Path.of(killed.readTo("bookholder-run-"));
            Path held = Path.of(living.readTo("bookholder-run-"));
            killed.kill();
            assertThat(left.resolve("something")).exists();
            try (RunFolder second = RunFolder.create(parent)) {
                assertThat(left).doesNotExist();
                assertThat(held.resolve("something")).exists();
                assertThat(first.path()).exists();
                assertThat(second.path()).exists();
            }
            // The lock of the first one was not lost by that: others still leave it alone.
            try (ChildJvm another = ChildJvm.start(Holding.class, parent.toString())) {
                another.readTo("bookholder-run-");
                assertThat(first.path()).exists();
                assertThat(held.resolve("something")).exists();
            }
        }
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "a file system of Windows has no POSIX permissions")
    void isForItsOwnerOnlyAndLeavesWhatIsNotARunsAlone() throws IOException {
        Path other = Files.createDirectory(parent.resolve("bookholder-run-of-somebody"));
        Path target = Files.createDirectory(parent.resolve("target"));
        Path link = Files.createSymbolicLink(parent.resolve("bookholder-run-link"), target);
        Files.createFile(target.resolve("lock"));
        try (RunFolder run = RunFolder.create(parent)) {
            assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(run.path())))
                    .isEqualTo("rwx------");
        }
        assertThat(other).exists();
        assertThat(link).exists();
        assertThat(target.resolve("lock")).exists();
    }

    /** Holds a folder until its input ends. */
    static final class Holding {
        private Holding() {}

        public static void main(String[] args) throws IOException {
            try (RunFolder run = RunFolder.create(Path.of(args[0]))) {
                Files.writeString(run.path().resolve("something"), "x");
                System.out.println(run.path());
                while (System.in.read() >= 0) {
                    // Until the test has seen enough.
                }
            }
        }
    }
}
