package org.bookholder.journal.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.PrivateFiles;
import org.bookholder.journal.event.EventCodec;
import org.bookholder.journal.event.Journal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.sqlite.SQLiteConfig;

/**
 * The journal as an SQLite database in write-ahead mode.
 *
 * <p>Each append is one transaction, forced to disk before it returns (synchronous FULL, sqlite.org/pragma.html). One that
 * fails is rolled back and leaves nothing behind; if even that is refused, the database is opened again for the next one.
 * So a disk that was full or away for a moment costs no more than that moment.
 */
public final class SqliteJournal implements Journal {
    private final Opener opener;
    private final Path file;
    private final boolean begun;
    private Connection connection;
    private boolean broken;
    private boolean closed;

    /** Connects to the database; passed in so that a test can hand out connections that fail. */
    @FunctionalInterface
    interface Opener {
        Connection open() throws SQLException;
    }

    /** Takes over a connection whose schema is in place; {@code opener} makes another one if it breaks. */
    SqliteJournal(Connection connection, Opener opener, Path file) {
        this(connection, opener, file, true);
    }

    private SqliteJournal(Connection connection, Opener opener, Path file, boolean begun) {
        this.begun = begun;
        this.connection = connection;
        this.opener = opener;
        this.file = file;
    }

    /**
     * Opens a journal, or begins one if there is no file.
     *
     * @throws ProblemException if the file is no journal, of a newer version, in use, or cannot be written
     */
    public static SqliteJournal open(Path file) throws ProblemException {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        try {
            // SQLite gives the write-ahead log and its index the permissions of the database.
            PrivateFiles.createIfMissing(file);
        } catch (IOException e) {
            throw DiskProblems.writing(file, e);
        }
        return open(file, config, true);
    }

    /**
     * Opens a journal to read it, also while another process writes it; {@link #append} is then refused.
     *
     * @throws ProblemException if the file is no journal, of a newer version, or cannot be read
     */
    public static SqliteJournal openForReading(Path file) throws ProblemException {
        if (!Files.exists(file)) {
            throw new ProblemException("there is no journal", file.toString(), "name the folder of a session");
        }
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        return open(file, config, false);
    }

    /**
     * Whether whoever wrote the journal last did not close it, if it is not open now: only then is something left in its
     * write-ahead log (sqlite.org/wal.html, section 4). Someone who read it at that very moment makes it seem so, too.
     */
    public static boolean wasKilled(Path file) {
        return file.resolveSibling(file.getFileName() + "-wal").toFile().length() > 0;
    }

    private static SqliteJournal open(Path file, SQLiteConfig config, boolean create) throws ProblemException {
        // Another reader or writer holds its locks for milliseconds; a session that is open in another process is
        // kept out by the lock of its folder.
        config.setBusyTimeout(2_000);
        Opener opener = () -> config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
        try {
            Connection connection = opener.open();
            try {
                boolean begun = Schema.prepare(connection, file, create);
                return new SqliteJournal(connection, opener, file, begun);
            } catch (SQLException | ProblemException e) {
                connection.close();
                throw e;
            }
        } catch (SQLException e) {
            throw SqlProblems.of(file, e);
        }
    }

    @Override
    public void append(List<SessionEvent> events) throws ProblemException {
        if (closed) {
            throw new IllegalStateException("the journal " + file + " is closed");
        }
        try {
            connect();
            write(events);
        } catch (SQLException e) {
            rollBack();
            throw SqlProblems.of(file, e);
        } catch (RuntimeException e) {
            rollBack();
            throw e;
        }
    }

    @Override
    public List<SessionEvent> events() throws ProblemException {
        List<SessionEvent> events = new ArrayList<>();
        if (!begun) {
            return events;
        }
        try {
            connect();
            try (Statement statement = connection.createStatement();
                    ResultSet rows = statement.executeQuery("SELECT seq, body FROM events ORDER BY seq")) {
                while (rows.next()) {
                    events.add(EventCodec.decode(rows.getString(2), file + ", event " + rows.getLong(1)));
                }
            }
        } catch (SQLException e) {
            throw SqlProblems.of(file, e);
        }
        return events;
    }

    @Override
    public void close() {
        if (!closed) {
            closed = true;
            letGo();
        }
    }

    private void write(List<SessionEvent> events) throws SQLException {
        // The statement is prepared each time: the driver gives up a statement that has failed.
        try (Statement transaction = connection.createStatement();
                PreparedStatement insert = connection.prepareStatement("INSERT INTO events (body) VALUES (?)")) {
            transaction.execute("BEGIN IMMEDIATE");
            for (SessionEvent event : events) {
                insert.setString(1, EventCodec.encode(event));
                insert.executeUpdate();
            }
            transaction.execute("COMMIT");
        }
    }

    /** SQLite may have rolled back by itself, or the disk may refuse this too: then only a new connection is safe. */
    private void rollBack() {
        try (Statement statement = connection.createStatement()) {
            statement.execute("ROLLBACK");
        } catch (SQLException e) {
            broken = true;
        }
    }

    /** How firmly a transaction is forced to disk: SQLite's number. */
    int synchronous() throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("PRAGMA synchronous")) {
            return row.getInt(1);
        }
    }

    private void connect() throws SQLException {
        if (broken) {
            letGo();
            connection = opener.open();
            broken = false;
        }
    }

    private void letGo() {
        try {
            connection.close();
        } catch (SQLException e) {
            // All that was appended is on disk, and SQLite tidies up when the file is opened again.
        }
    }
}
