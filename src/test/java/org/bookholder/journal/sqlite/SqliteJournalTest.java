package org.bookholder.journal.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.event.Journal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Mover;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.FailingConnection;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;

final class SqliteJournalTest {
    @TempDir
    private Path folder;

    @Test
    void keepsEventsInTheirOrder() throws ProblemException {
        List<SessionEvent> events = List.of(held(3), held(1), new SessionEvent.Resumed(new StreamTime(2)));
        try (SqliteJournal journal = SqliteJournal.open(file())) {
            for (SessionEvent event : events) {
                journal.append(event);
            }
            assertThat(journal.events()).isEqualTo(events);
        }
        try (SqliteJournal journal = SqliteJournal.open(file())) {
            journal.append(held(9));
            assertThat(journal.events()).hasSize(4).startsWith(held(3)).endsWith(held(9));
        }
    }

    @Test
    void canBeReadWhileItIsWritten() throws ProblemException {
        try (SqliteJournal writer = SqliteJournal.open(file());
                Journal reader = SqliteJournal.openForReading(file())) {
            writer.append(held(1));
            assertThat(reader.events()).containsExactly(held(1));
            writer.append(held(2));
            assertThat(reader.events()).containsExactly(held(1), held(2));
        }
    }

    @Test
    void showsKindAndTimeToAQuery() throws ProblemException, SQLException {
        try (SqliteJournal journal = SqliteJournal.open(file())) {
            journal.append(held(48_000));
        }
        try (Connection connection = connect();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT type, at FROM events")) {
            assertThat(row.getString("type")).isEqualTo("held");
            assertThat(row.getLong("at")).isEqualTo(48_000);
        }
    }

    @Test
    void writesNothingWhenOpenedToRead() throws ProblemException {
        SqliteJournal.open(file()).close();
        try (Journal reader = SqliteJournal.openForReading(file())) {
            assertProblem(() -> reader.append(held(1)), "cannot be written");
        }
    }

    @Test
    void refusesANewerVersion() throws ProblemException, SQLException {
        SqliteJournal.open(file()).close();
        change("PRAGMA user_version = " + (Schema.VERSION + 1));
        assertProblem(() -> SqliteJournal.open(file()), "newer version of Bookholder");
        assertProblem(() -> SqliteJournal.openForReading(file()), "newer version of Bookholder");
    }

    @Test
    void refusesTheDatabaseOfAnotherProgram() throws SQLException {
        change("CREATE TABLE recipes (name TEXT)");
        assertProblem(() -> SqliteJournal.open(file()), "not a session's journal");
    }

    @Test
    void refusesAFileThatIsNoDatabase() throws IOException {
        Files.writeString(file(), "Dear diary, ".repeat(500));
        assertProblem(() -> SqliteJournal.open(file()), "not a session's journal");
        assertThat(file()).content().startsWith("Dear diary");
    }

    @Test
    void reportsADamagedDatabase() throws IOException, ProblemException {
        try (SqliteJournal journal = SqliteJournal.open(file())) {
            for (int i = 0; i < 2_000; i++) {
                StreamTime at = new StreamTime(i);
                journal.append(new SessionEvent.PositionMoved(at, ReadingPosition.START, Mover.HAND, 0));
            }
        }
        byte[] bytes = Files.readAllBytes(file());
        Arrays.fill(bytes, 8_192, bytes.length, (byte) 0x5A);
        Files.write(file(), bytes);
        try (SqliteJournal journal = SqliteJournal.open(file())) {
            assertProblem(journal::events, "is damaged");
        }
    }

    @Test
    void anEmptyFileAfterAKillBecomesANewJournal() throws IOException, ProblemException {
        Files.createFile(file());
        try (Journal nothing = SqliteJournal.openForReading(file())) {
            assertThat(nothing.events()).isEmpty();
        }
        try (SqliteJournal journal = SqliteJournal.open(file())) {
            assertThat(journal.events()).isEmpty();
        }
    }

    @Test
    void reportsALockedDatabase() throws ProblemException, SQLException {
        SqliteJournal.open(file()).close();
        try (Connection other = connect();
                Statement statement = other.createStatement();
                SqliteJournal journal = SqliteJournal.open(file())) {
            statement.execute("BEGIN IMMEDIATE");
            assertProblem(() -> journal.append(held(1)), "open in another process");
            statement.execute("ROLLBACK");
            journal.append(List.of(held(1), held(2)));
            assertThat(journal.events()).containsExactly(held(1), held(2));
        }
    }

    @Test
    void reportsAMissingFolder() {
        assertProblem(() -> SqliteJournal.open(folder.resolve("gone/journal.db")), "no such file or folder");
    }

    @Test
    void writesAllOfABatchOrNothing() throws ProblemException, SQLException {
        SqliteJournal.open(file()).close();
        FailingConnection disk = new FailingConnection();
        try (SqliteJournal journal = new SqliteJournal(disk.over(connect()), this::connect, file())) {
            journal.append(held(1));
            disk.failAfter(1, SQLiteErrorCode.SQLITE_IOERR_WRITE);
            assertProblem(() -> journal.append(List.of(held(2), held(3))), "cannot be read or written");
            assertThat(journal.events()).containsExactly(held(1));
            disk.work();
            journal.append(List.of(held(2), held(3)));
            assertThat(journal.events()).containsExactly(held(1), held(2), held(3));
        }
    }

    @Test
    void writesABatchOnceThoughItsCommitTookEffectAndFailed() throws ProblemException, SQLException {
        SqliteJournal.open(file()).close();
        FailingConnection disk = new FailingConnection();
        try (SqliteJournal journal = new SqliteJournal(disk.over(connect()), () -> disk.over(connect()), file())) {
            journal.append(held(1));
            disk.failAfterCommit();
            assertProblem(() -> journal.append(List.of(held(2), held(2), held(3))), "cannot be read or written");
            journal.append(List.of(held(2), held(2), held(3), held(4)));
            journal.append(held(4));
            assertThat(journal.events()).containsExactly(held(1), held(2), held(2), held(3), held(4), held(4));
        }
    }

    /** Whoever gives the events again may give fewer at once. */
    @Test
    void writesABatchOnceThoughItIsGivenAgainInParts() throws ProblemException, SQLException {
        SqliteJournal.open(file()).close();
        FailingConnection disk = new FailingConnection();
        try (SqliteJournal journal = new SqliteJournal(disk.over(connect()), () -> disk.over(connect()), file())) {
            disk.failAfterCommit();
            assertProblem(() -> journal.append(List.of(held(1), held(2), held(3))), "cannot be read or written");
            journal.append(held(1));
            journal.append(List.of(held(2), held(3)));
            assertThat(journal.events()).containsExactly(held(1), held(2), held(3));
        }
    }

    /** Half a surrogate pair, as a page may send it, is no UTF-8. */
    @Test
    void findsAnEventThatSqliteKeepsInOtherLetters() throws ProblemException, SQLException {
        SqliteJournal.open(file()).close();
        FailingConnection disk = new FailingConnection();
        SessionEvent odd = new SessionEvent.PickupMarked(new StreamTime(1), 1, "half a letter: \ud83d");
        try (SqliteJournal journal = new SqliteJournal(disk.over(connect()), () -> disk.over(connect()), file())) {
            disk.failAfterCommit();
            assertProblem(() -> journal.append(odd), "cannot be read or written");
            journal.append(odd);
            assertThat(journal.events()).hasSize(1);
        }
    }

    @Test
    void tellsAnEventThatCanNeverBeWrittenFromADiskThatRefuses() throws ProblemException, SQLException {
        SqliteJournal.open(file()).close();
        SQLiteConfig small = new SQLiteConfig();
        small.setPragma(SQLiteConfig.Pragma.LIMIT_LENGTH, "1000");
        Connection connection = small.createConnection("jdbc:sqlite:" + file());
        try (SqliteJournal journal = new SqliteJournal(connection, this::connect, file())) {
            SessionEvent large = new SessionEvent.PickupMarked(new StreamTime(1), 1, "x".repeat(1000));
            assertThatIllegalArgumentException().isThrownBy(() -> journal.append(List.of(held(1), large, held(2))));
            assertThat(journal.events()).isEmpty();
            journal.append(List.of(held(1), held(2)));
            assertThat(journal.events()).containsExactly(held(1), held(2));
        }
    }

    @Test
    void addsNothingBesideWhatAnotherHasWrittenMeanwhile() throws ProblemException {
        try (SqliteJournal first = SqliteJournal.open(file());
                SqliteJournal second = SqliteJournal.open(file())) {
            first.append(held(1));
            second.append(held(2));
            assertProblem(() -> first.append(held(3)), "was written by another process");
            assertThat(first.events()).containsExactly(held(1), held(2));
        }
    }

    /** The disk is full in SQLite's own eyes: the database may not grow. */
    @Test
    void continuesWhenAFullDiskHasRoomAgain() throws ProblemException, SQLException {
        SqliteJournal.open(file()).close();
        AtomicInteger pages = new AtomicInteger(1_000_000);
        Connection first = connect();
        try (SqliteJournal journal = new SqliteJournal(first, () -> limited(connect(), pages.get()), file())) {
            journal.append(held(1));
            pages.set(1);
            limited(first, pages.get());
            for (int i = 0; i < 3; i++) {
                assertProblem(() -> journal.append(many(2, 400)), "the disk is full");
            }
            pages.set(1_000_000);
            journal.append(many(2, 400));
            journal.append(held(400));
            assertThat(journal.events()).hasSize(400).last().isEqualTo(held(400));
        }
    }

    @Test
    void opensTheDatabaseAgainWhenItsConnectionIsGone() throws ProblemException, SQLException {
        SqliteJournal.open(file()).close();
        FailingConnection disk = new FailingConnection();
        Connection first = connect();
        try (SqliteJournal journal = new SqliteJournal(disk.over(first), () -> disk.over(connect()), file())) {
            journal.append(held(1));
            first.close();
            assertProblem(() -> journal.append(held(2)), "");
            journal.append(held(2));
            assertThat(journal.events()).containsExactly(held(1), held(2));
            assertThat(disk.opened()).isEqualTo(2);
        }
    }

    @Test
    void forcesEachBatchToTheDisk() throws ProblemException, SQLException {
        try (SqliteJournal journal = SqliteJournal.open(file())) {
            // 2 is FULL: in write-ahead mode the log is then forced with each transaction (sqlite.org/pragma.html).
            assertThat(journal.synchronous()).isEqualTo(2);
        }
    }

    @Test
    void refusesAnAppendAfterItIsClosed() throws ProblemException {
        SqliteJournal journal = SqliteJournal.open(file());
        journal.close();
        journal.close();
        assertThatIllegalStateException().isThrownBy(() -> journal.append(held(1)));
    }

    private Path file() {
        return folder.resolve("journal.db");
    }

    private Connection connect() throws SQLException {
        return DriverManager.getConnection("jdbc:sqlite:" + file());
    }

    private void change(String sql) throws SQLException {
        try (Connection connection = connect();
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private static Connection limited(Connection connection, int pages) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA max_page_count = " + pages);
        }
        return connection;
    }

    private static List<SessionEvent> many(int from, int to) {
        return IntStream.range(from, to).mapToObj(SqliteJournalTest::held).toList();
    }

    private static SessionEvent held(long ticks) {
        return new SessionEvent.Held(new StreamTime(ticks));
    }

    private void assertProblem(ThrowingCallable action, String what) {
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(action)
                .satisfies(e -> assertThat(e.what()).contains(what))
                .satisfies(e -> assertThat(e.where()).startsWith(folder.toString()))
                .satisfies(e -> assertThat(e.remedy()).isNotBlank());
    }
}
