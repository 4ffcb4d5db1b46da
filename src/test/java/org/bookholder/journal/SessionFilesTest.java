package org.bookholder.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.rolled;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.journal.sqlite.SqliteJournal;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class SessionFilesTest {
    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "journal.db",
                "take-001.wav",
                "take-1000.wav",
                "take-001.2.wav",
                "script.md",
                "script.txt",
                "footage.json"
            })
    void allFilesOfASessionBelongToIt(String name) {
        assertThat(SessionFiles.belongs(name)).isTrue();
        assertThat(SessionFiles.isSound(name)).isEqualTo(name.endsWith(".wav"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "lock",
                "desk.json",
                "fault.log",
                "journal.db-wal",
                "../take-001.wav",
                "take-/x.wav",
                "script.md.bak",
                "my-take-001.wav"
            })
    void keysLogsAndWhatCanBeMadeAgainDoNot(String name) {
        assertThat(SessionFiles.belongs(name)).isFalse();
    }

    @Test
    void findsTheFilesBesideTheJournalByName() throws ProblemException, IOException {
        for (String name :
                new String[] {"take-002.wav", "take-001.wav", "script.md", "journal.db", "lock", "notes.txt"}) {
            Files.writeString(folder.resolve(name), "");
        }
        Files.createDirectory(folder.resolve("take-003.wav"));
        assertThat(SessionFiles.besideJournal(folder))
                .extracting(Path::getFileName)
                .extracting(Path::toString)
                .containsExactly("script.md", "take-001.wav", "take-002.wav");
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(() -> SessionFiles.besideJournal(folder.resolve("none")))
                .withMessageContaining("none");
    }

    @Test
    void copiesAnOpenJournalIntoOneFile() throws ProblemException, IOException {
        Path copy = folder.resolve("copy.db");
        try (SqliteJournal open = SqliteJournal.open(folder.resolve("journal.db"))) {
            open.append(rolled(1, 0));
            SessionFiles.copyJournal(folder, copy);
            open.append(cut(1, 1));
        }
        assertThat(copy.resolveSibling("copy.db-wal")).doesNotExist();
        try (SqliteJournal copied = SqliteJournal.open(copy)) {
            assertThat(copied.events()).containsExactly(rolled(1, 0));
        }
        Path full = Files.writeString(folder.resolve("full"), "taken");
        assertThatExceptionOfType(ProblemException.class).isThrownBy(() -> SessionFiles.copyJournal(folder, full));
        assertThat(full).hasContent("taken");
    }
}
