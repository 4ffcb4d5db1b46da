package org.bookholder.journal.sqlite;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import org.bookholder.problem.ProblemException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;

/** Copies a journal into one file that is complete by itself, without a write-ahead log. */
public final class JournalCopy {
    private JournalCopy() {}

    /**
     * Writes the copy as it is at one moment, also while the journal is open (sqlite.org/lang_vacuum.html, VACUUM INTO).
     *
     * @param journal the journal, which is not changed
     * @param copy an empty file, or one that does not exist
     * @throws ProblemException if the journal cannot be read, or the copy cannot be written
     */
    public static void write(Path journal, Path copy) throws ProblemException {
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        config.setBusyTimeout(2_000);
        try (Connection connection = config.createConnection("jdbc:sqlite:" + address(journal));
                PreparedStatement vacuum = connection.prepareStatement("VACUUM INTO ?")) {
            vacuum.setString(1, copy.toAbsolutePath().toString());
            vacuum.execute();
        } catch (SQLException e) {
            boolean full = (e.getErrorCode() & 0xFF) == SQLiteErrorCode.SQLITE_FULL.code;
            throw SqlProblems.of(full ? copy : journal, e);
        }
    }

    /**
     * SQLite makes an index beside a journal in write-ahead mode even to read it, unless it is told that nothing changes
     * (sqlite.org/wal.html, section "Read-Only Databases").
     */
    private static String address(Path journal) {
        Path file = journal.toAbsolutePath();
        boolean unchanging = !Files.isWritable(file.resolveSibling(".")) && !SqliteJournal.wasKilled(file);
        return unchanging ? file.toUri() + "?immutable=1" : file.toString();
    }
}
