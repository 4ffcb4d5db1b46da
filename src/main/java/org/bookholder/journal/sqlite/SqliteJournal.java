package org.bookholder.journal.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.PrivateFiles;
import org.bookholder.journal.event.EventCodec;
import org.bookholder.journal.event.Journal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;
import org.sqlite.SQLiteConfig;

/**
 * The journal as an SQLite database in write-ahead mode.
 *
 * <p>Every append is a transaction of its own, handed to the operating system before it returns: a kill of the program
 * loses nothing. Against loss of power the log is forced to disk with every event but a mere move of the position, and
 * with a move once a second of audio has gone by since; while a take runs the sound is measured every second, so no more
 * than a second of moves is ever at stake. An event that could not be written is kept and written before the next one,
 * so the journal never has a hole.
 */
public final class SqliteJournal implements Journal {
    private final Connection connection;
    private final Path file;
    private final Statement pragma;
    private final PreparedStatement insert;
    private final Deque<SessionEvent> unwritten = new ArrayDeque<>();
    private StreamTime forcedTo = StreamTime.ZERO;
    private boolean forcing;
    private boolean closed;

    /** Takes over a connection whose schema is in place. */
    SqliteJournal(Connection connection, Path file) throws SQLException {
        this.connection = connection;
        this.file = file;
        pragma = connection.createStatement();
        insert = connection.prepareStatement("INSERT INTO events (body) VALUES (?)");
    }

    /**
     * Opens a journal, or begins one if there is no file.
     *
     * @throws ProblemException if the file is no journal, of a newer version, in use, or cannot be written
     */
    public static SqliteJournal open(Path file) throws ProblemException {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.NORMAL);
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
        try {
            Connection connection = config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
            try {
                Schema.prepare(connection, file, create);
                return new SqliteJournal(connection, file);
            } catch (SQLException | ProblemException e) {
                connection.close();
                throw e;
            }
        } catch (SQLException e) {
            throw SqlProblems.of(file, e);
        }
    }

    @Override
    public void append(SessionEvent event) throws ProblemException {
        if (closed) {
            throw new IllegalStateException("the journal " + file + " is closed");
        }
        unwritten.add(event);
        try {
            writeAll();
        } catch (SQLException e) {
            throw SqlProblems.of(file, e);
        }
    }

    @Override
    public List<SessionEvent> events() throws ProblemException {
        List<SessionEvent> events = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT seq, body FROM events ORDER BY seq")) {
            while (rows.next()) {
                events.add(EventCodec.decode(rows.getString(2), file + ", event " + rows.getLong(1)));
            }
        } catch (SQLException e) {
            throw SqlProblems.of(file, e);
        }
        return events;
    }

    /** Writes what is still unwritten, if it now can be, and lets the file go; calling it again does nothing. */
    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        try (connection;
                pragma;
                insert) {
            writeAll();
        } catch (SQLException e) {
            // What could not be written was told by append; all the rest is on disk, and SQLite tidies up when the
            // file is opened again.
        }
    }

    private void writeAll() throws SQLException {
        // One transaction for each, so that with a full disk an append stays cheap however many are waiting.
        while (!unwritten.isEmpty()) {
            write(unwritten.element());
            unwritten.remove();
        }
    }

    private void write(SessionEvent event) throws SQLException {
        boolean force = !(event instanceof SessionEvent.PositionMoved)
                || event.at().since(forcedTo).ticks() >= StreamTime.TICKS_PER_SECOND;
        if (force != forcing) {
            // Full: the log is forced to disk when the transaction is committed. Normal: it is written only.
            pragma.execute("PRAGMA synchronous = " + (force ? "FULL" : "NORMAL"));
            forcing = force;
        }
        insert.setString(1, EventCodec.encode(event));
        insert.executeUpdate();
        if (force) {
            forcedTo = event.at();
        }
    }
}
