package org.bookholder.journal.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.Optional;
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
        Optional<ReadableCopy> readable = ReadableCopy.ifNeeded(journal);
        try {
            vacuum(readable.map(ReadableCopy::file).orElse(journal), copy);
        } catch (SQLException e) {
            boolean full = (e.getErrorCode() & 0xFF) == SQLiteErrorCode.SQLITE_FULL.code;
            throw SqlProblems.of(full ? copy : journal, e);
        } finally {
            readable.ifPresent(ReadableCopy::discard);
        }
    }

    private static void vacuum(Path journal, Path copy) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        config.setBusyTimeout(2_000);
        try (Connection connection = config.createConnection("jdbc:sqlite:" + journal.toAbsolutePath());
                PreparedStatement vacuum = connection.prepareStatement("VACUUM INTO ?")) {
            vacuum.setString(1, copy.toAbsolutePath().toString());
            vacuum.execute();
        }
    }
}
