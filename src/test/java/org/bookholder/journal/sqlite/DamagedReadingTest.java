package org.bookholder.journal.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.moved;
import static org.bookholder.testing.Readings.rolled;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.bookholder.journal.event.Journal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Reading a damaged journal without repairing it, and the messages about its damage. */
final class DamagedReadingTest {
    private static final List<SessionEvent> EVENTS = List.of(rolled(1, 0), moved(1, 1, 2, 1), cut(1, 2));

    @TempDir
    private Path folder;

    private Path journal;

    @BeforeEach
    void write() throws ProblemException {
        journal = folder.resolve("journal.db");
        try (SqliteJournal open = SqliteJournal.open(journal)) {
            open.append(EVENTS);
        }
    }

    @Test
    void nothingIsSaidOfAWholeOne() throws ProblemException {
        reads(EVENTS, "");
        assertThat(SqliteJournal.soundEvents(journal)).contains(EVENTS);
    }

    @Test
    void aRowThatCannotBeUnderstoodIsPassedOver() throws ProblemException, SQLException {
        change("UPDATE events SET body = '{}' WHERE seq = 2");
        reads(List.of(EVENTS.get(0), EVENTS.get(2)), "1 of 3 entries cannot be read");
        assertThat(SqliteJournal.soundEvents(journal)).isEmpty();
    }

    @Test
    void aRowOfWhichALetterHasChangedIsNamed() throws ProblemException, SQLException {
        change("UPDATE events SET body = replace(body, '\"line\":1', '\"line\":7') WHERE seq = 2");
        try (Journal open = SqliteJournal.openForReading(journal)) {
            assertThat(open.events()).hasSize(3).doesNotContain(EVENTS.get(1));
            assertThat(open.damage().map(ProblemException::what)).contains("1 of 3 entries has changed on the disk");
        }
        assertThat(SqliteJournal.soundEvents(journal)).isEmpty();
    }

    @Test
    void rowsOfAnEarlierVersionAreBelieved() throws ProblemException, SQLException {
        change("UPDATE events SET body = json_remove(body, '$.crc32c')");
        reads(EVENTS, "");
        try (SqliteJournal open = SqliteJournal.open(journal)) {
            open.append(cut(2, 9));
            assertThat(open.events()).hasSize(4).endsWith(cut(2, 9));
            assertThat(open.damage()).isEmpty();
        }
        assertThat(SqliteJournal.soundEvents(journal)).isPresent();
    }

    @Test
    void aRowThatIsGoneIsMissed() throws ProblemException, SQLException {
        change("DELETE FROM events WHERE seq = 1");
        reads(EVENTS.subList(1, 3), "some entries are missing");
        assertThat(SqliteJournal.soundEvents(journal)).isEmpty();
    }

    @Test
    void damageThatIsMendedIsNotToldOfAgain() throws ProblemException, SQLException {
        try (Journal open = SqliteJournal.openForReading(journal)) {
            change("UPDATE events SET seq = 9 WHERE seq = 3");
            open.events();
            assertThat(open.damage()).isPresent();
            change("UPDATE events SET seq = 3 WHERE seq = 9");
            open.events();
            assertThat(open.damage()).isEmpty();
        }
    }

    @Test
    void withoutItsBeginningItIsReadAndNotWritten() throws ProblemException, IOException {
        byte[] bytes = Files.readAllBytes(journal);
        Arrays.fill(bytes, 0, 100, (byte) 0);
        Files.write(journal, bytes);
        reads(EVENTS, "is damaged, and not all of its entries can be read");
        try (Journal open = SqliteJournal.openForReading(journal)) {
            refuses(() -> open.append(cut(1, 3)), "is damaged");
        }
        refuses(() -> SqliteJournal.open(journal), "is damaged");
        assertThat(journal).hasBinaryContent(bytes);
        assertThat(SqliteJournal.soundEvents(journal)).isEmpty();
    }

    @Test
    void anEmptyFileBesideALogIsDamageAndTheLogStays() throws ProblemException, IOException {
        Path killed = Files.createFile(folder.resolve("killed.db"));
        Path log = folder.resolve("killed.db-wal");
        try (SqliteJournal open = SqliteJournal.open(journal)) {
            open.append(cut(2, 9));
            Files.copy(folder.resolve("journal.db-wal"), log);
        }
        byte[] before = Files.readAllBytes(log);
        refuses(() -> SqliteJournal.open(killed), "is damaged");
        assertThat(log).hasBinaryContent(before);
        try (Journal open = SqliteJournal.openForReading(killed)) {
            assertThat(open.events()).contains(cut(2, 9));
        }
    }

    @Test
    void anUndamagedJournalThatIsRefusedIsNotSearched() throws SQLException {
        change("PRAGMA user_version = " + (Schema.VERSION + 1));
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(() -> SqliteJournal.soundEvents(journal))
                .withMessageContaining("newer version");
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(() -> SqliteJournal.openForReading(folder.resolve("none.db")))
                .withMessageContaining("there is no journal");
    }

    /** Result codes: sqlite.org/rescode.html. */
    @ParameterizedTest
    @CsvSource({
        "SQLITE_FULL, the disk is full, false",
        "SQLITE_BUSY, is open in another process, false",
        "SQLITE_LOCKED, is open in another process, false",
        "SQLITE_READONLY, cannot be written, false",
        "SQLITE_READONLY_DBMOVED, cannot be written, false",
        "SQLITE_PERM, cannot be written, false",
        "SQLITE_CANTOPEN, cannot be opened, false",
        "SQLITE_NOTADB, is not a session's journal, true",
        "SQLITE_CORRUPT, is damaged, true",
        "SQLITE_IOERR_WRITE, cannot be read or written (the text), true",
        "SQLITE_ERROR, does not work (the text), true",
        "SQLITE_NOMEM, does not work (the text), false"
    })
    void eachErrorOfSqliteIsSaidInWords(SQLiteErrorCode code, String what, boolean damage) {
        for (SQLException error :
                List.of(new SQLiteException("the text", code), new SQLException("the text", "", code.code))) {
            ProblemException problem = SqlProblems.of(journal, error);
            assertThat(problem.what()).isEqualTo(what);
            assertThat(problem.where()).isEqualTo(journal.toString());
            assertThat(SqlProblems.damaged(error)).isEqualTo(damage);
            assertThat(SqlProblems.tooLarge(error)).isFalse();
        }
        assertThat(SqlProblems.tooLarge(new SQLiteException("", SQLiteErrorCode.SQLITE_TOOBIG)))
                .isTrue();
    }

    private void reads(List<SessionEvent> events, String damage) throws ProblemException {
        try (Journal open = SqliteJournal.openForReading(journal)) {
            assertThat(open.events()).isEqualTo(events);
            assertThat(open.damage().map(ProblemException::what).orElse("")).isEqualTo(damage);
            open.damage().ifPresent(told -> assertThat(told.remedy()).contains("'bookholder repair " + folder + "'"));
        }
    }

    private static void refuses(ThrowingCallable action, String why) {
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(action)
                .satisfies(e -> assertThat(e.what()).contains(why));
    }

    private void change(String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + journal);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
