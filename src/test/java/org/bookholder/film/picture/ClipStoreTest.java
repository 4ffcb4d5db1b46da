package org.bookholder.film.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.bookholder.files.RunFolder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Clips of two films that are made at once. */
final class ClipStoreTest {
    @TempDir
    private Path folder;

    @Test
    void clipsStayWhileAnotherFilmIsBeingMade() throws Exception {
        ClipStore store = new ClipStore(folder);
        Path used = Files.writeString(store.file("a.mp4"), "a");
        Path unused = Files.writeString(store.file("b.mp4"), "b");
        try (RunFolder own = RunFolder.create(folder)) {
            try (RunFolder other = RunFolder.create(folder)) {
                store.keepOnly(Set.of("a.mp4"), own.path());
                assertThat(other.path()).exists();
            }
            assertThat(unused).exists();

            store.keepOnly(Set.of("a.mp4"), own.path());
            assertThat(unused).doesNotExist();
            assertThat(own.path()).exists();
        }
        assertThat(used).exists();
    }
}
