package org.bookholder.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class FolderLockTest {
    @TempDir
    private Path folder;

    private final SessionLocks here = new SessionLocks();

    /** Plays the part of another process: it has no part in what this one remembers. */
    private final SessionLocks elsewhere = new SessionLocks();

    @Test
    void isTakenOnceAndAgainAfterItIsClosed() throws ProblemException, IOException {
        FolderLock first = FolderLock.take(folder, here);
        assertThat(FolderLock.tryTake(folder, here)).isEmpty();
        assertThat(FolderLock.tryTake(folder, elsewhere)).isEmpty();
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(() -> FolderLock.take(folder, elsewhere))
                .withMessageContaining("the session is open in another process");
        first.close();
        FolderLock second = FolderLock.tryTake(folder, elsewhere).orElseThrow();
        // Whoever closes twice does not open what another has locked since.
        first.close();
        assertThat(FolderLock.tryTake(folder, elsewhere)).isEmpty();
        assertThat(FolderLock.tryTake(folder, here)).isEmpty();
        second.close();
        FolderLock.take(folder, here).close();
    }

    @Test
    void tellsWhetherItIsTakenAndLeavesItAsItIs() throws ProblemException, IOException {
        assertThat(FolderLock.isTaken(folder, here)).isFalse();
        assertThat(folder).isEmptyDirectory();
        try (FolderLock lock = FolderLock.take(folder, here)) {
            assertThat(lock).isNotNull();
            assertThat(FolderLock.isTaken(folder, here)).isTrue();
            assertThat(FolderLock.isTaken(folder, elsewhere)).isTrue();
        }
        assertThat(FolderLock.isTaken(folder, here)).isFalse();
        assertThat(FolderLock.isTaken(folder, here)).isFalse();
        FolderLock.take(folder, elsewhere).close();
    }

    @Test
    void aFolderThatTakesNoFileIsRefusedAndNotRemembered() throws IOException, ProblemException {
        Path inTheWay = Files.createDirectory(folder.resolve("lock"));
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(() -> FolderLock.take(folder, here))
                .withMessageContaining("cannot be written");
        assertThat(FolderLock.isTaken(folder, here)).isFalse();
        Files.delete(inTheWay);
        FolderLock.take(folder, here).close();
    }

    @Test
    void onlyTheFileOfThatNameIsTheLock() {
        assertThat(FolderLock.isLockFile(folder.resolve("lock"))).isTrue();
        assertThat(FolderLock.isLockFile(folder.resolve("padlock"))).isFalse();
        assertThat(FolderLock.isLockFile(folder.resolve("lock/x"))).isFalse();
    }
}
