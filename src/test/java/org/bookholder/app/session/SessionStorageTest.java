package org.bookholder.app.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.app.environment.Environment;
import org.bookholder.journal.SessionFolder;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class SessionStorageTest {
    @TempDir
    private Path folder;

    private Environment here;
    private SessionStorage storage;
    private Path one;
    private Path two;

    @BeforeEach
    void keep() throws Exception {
        here = StoredExamples.here(folder);
        storage = new SessionStorage(here);
        one = folder.resolve("sessions/one");
        two = folder.resolve("sessions/two");
        Files.createDirectories(folder.resolve("sessions"));
        StoredExamples.write(one, "lesson.md");
        StoredExamples.write(two, "lesson.md");
    }

    @Test
    void eachSessionHasTheRoomThatItTakes() throws Exception {
        Files.write(one.resolve("more.bin"), new byte[1_000_000]);
        List<SessionStorage.Kept> kept = storage.list(List.of(here.sessions()));
        assertThat(kept).extracting(session -> session.summary().folder()).containsExactly(one, two);
        assertThat(kept.get(0).bytes() - kept.get(1).bytes()).isBetween(1_000_000L, 1_010_000L);
        assertThat(kept.get(1).summary().title()).isEqualTo("A lesson");
    }

    @Test
    void oneIsRemovedWithAllThatLiesInItAndNothingElse() throws Exception {
        Path kept = Files.writeString(folder.resolve("kept.txt"), "Not a part of it.");
        Files.createSymbolicLink(one.resolve("link"), kept);
        storage.remove(one, List.of(here.sessions()));
        assertThat(one).doesNotExist();
        assertThat(two).isDirectory();
        assertThat(kept).exists();
    }

    @Test
    void oneThatIsOpenIsNotRemoved() throws Exception {
        try (SessionFolder open = SessionFolder.open(one, here.locks())) {
            assertThat(open.events()).isNotEmpty();
            assertThatThrownBy(() -> storage.remove(one, List.of(here.sessions())))
                    .hasMessageContaining("this session is open; close it first");
        }
        assertThat(storage.list(List.of(here.sessions()))).hasSize(2);
    }

    @Test
    void nothingIsRemovedThatIsNoSessionOfThesePlaces() throws Exception {
        Path elsewhere = Files.createDirectories(folder.resolve("elsewhere"));
        for (Path wrong : List.of(elsewhere, folder, here.sessions(), one.resolve(".."))) {
            assertThatThrownBy(() -> storage.remove(wrong, List.of(here.sessions())))
                    .hasMessageContaining("there is no such session any more");
        }
        assertThat(storage.list(List.of(here.sessions()))).hasSize(2);
    }
}
