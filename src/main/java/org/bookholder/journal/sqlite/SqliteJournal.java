package org.bookholder.journal.sqlite;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.PrivateFiles;
import org.bookholder.journal.event.CheckedText;
import org.bookholder.journal.event.EventCodec;
import org.bookholder.journal.event.Journal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConfig;

/**
 * The journal as an SQLite database in write-ahead mode.
 *
 * <p>Each append is one transaction, forced to disk before it returns (synchronous FULL, sqlite.org/pragma.html). One that
 * fails is rolled back and leaves nothing behind; if even that is refused, the database is opened again for the next one.
 * So a disk that was full or away for a moment costs no more than that moment. Events are numbered here and not by SQLite:
 * if a transaction that was answered with an error took effect, the next append finds its events and does not repeat them.
 */
public final class SqliteJournal implements Journal {
    private final Opener opener;
    private final Path file;
    private final boolean begun;
    private final boolean readOnly;
    private Connection connection;
    private boolean broken;
    private boolean closed;
    private Optional<ProblemException> damage = Optional.empty();

    /** The number of the last event that is known to be on disk; empty before the first look. */
    private OptionalLong last = OptionalLong.empty();

    /** Connects to the database; passed in so that a test can hand out connections that fail. */
    @FunctionalInterface
    interface Opener {
        Connection open() throws SQLException;
    }

    /** Takes over a connection whose schema is in place; {@code opener} makes another one if it breaks. */
    SqliteJournal(Connection connection, Opener opener, Path file) {
        this(connection, opener, file, true, false);
    }

    private SqliteJournal(Connection connection, Opener opener, Path file, boolean begun, boolean readOnly) {
        this.begun = begun;
        this.readOnly = readOnly;
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
        try {
            return open(file, config, true);
        } catch (ProblemException e) {
            throw SalvagedJournal.inPlaceOf(file, e).damage().orElse(e);
        }
    }

    /**
     * Opens a journal to read it, also while another process writes it; {@link #append} is then refused. Of one that is
     * damaged, what can be read is read; one that lies where nothing can be written is read from a temporary copy.
     *
     * @throws ProblemException if the file is no journal, of a newer version, or cannot be read
     */
    public static Journal openForReading(Path file) throws ProblemException {
        if (!Files.exists(file)) {
            throw new ProblemException("there is no journal", file.toString(), "name the folder of a session");
        }
        Optional<ReadableCopy> copy = ReadableCopy.ifNeeded(file);
        return copy.isPresent() ? CopiedJournal.of(file, copy.get()) : openInPlace(file);
    }

    static Journal openInPlace(Path file) throws ProblemException {
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        try {
            return open(file, config, false);
        } catch (ProblemException e) {
            return SalvagedJournal.inPlaceOf(file, e);
        }
    }

    /**
     * The events of a journal in which nothing is damaged, as far as SQLite can tell; empty of any other. Changes nothing.
     *
     * @throws ProblemException if it is of a newer version or cannot be read for another reason than damage
     */
    public static Optional<List<SessionEvent>> soundEvents(Path file) throws ProblemException {
        try (Journal journal = openForReading(file)) {
            List<SessionEvent> events = journal.events();
            boolean sound = journal.damage().isEmpty() && journal instanceof SqliteJournal sqlite && sqlite.isSound();
            return sound ? Optional.of(events) : Optional.empty();
        } catch (ProblemException e) {
            if (SalvagedJournal.damaged(e)) {
                return Optional.empty();
            }
            throw e;
        }
    }

    private boolean isSound() throws ProblemException {
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("PRAGMA integrity_check")) {
            return row.getString(1).equals("ok");
        } catch (SQLException e) {
            throw SqlProblems.of(file, e);
        }
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
        if (file.toFile().length() == 0 && wasKilled(file)) {
            // SQLite would throw the log away (sqlite.org/wal.html), and all that is left of the session with it.
            throw new ProblemException(Schema.DAMAGED, file.toString(), SqlProblems.remedy(file));
        }
        Opener opener = () -> config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
        try {
            Connection connection = opener.open();
            try {
                boolean begun = Schema.prepare(connection, file, create);
                return new SqliteJournal(connection, opener, file, begun, !create);
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
        // A file that was deleted can still be written, but nobody will find what is in it.
        if (!Files.exists(file)) {
            throw new ProblemException("is gone", file.toString(), "put the session's folder back");
        }
        try {
            connect();
            write(events);
        } catch (SQLException e) {
            rollBack();
            if (SqlProblems.tooLarge(e)) {
                throw new IllegalArgumentException("each event must be small enough for the database", e);
            }
            throw SqlProblems.of(file, e);
        } catch (ProblemException | RuntimeException e) {
            rollBack();
            throw e;
        }
    }

    @Override
    public List<SessionEvent> events() throws ProblemException {
        damage = Optional.empty();
        if (!begun) {
            return List.of();
        }
        try {
            connect();
            return readable();
        } catch (SQLException e) {
            ProblemException problem = SqlProblems.of(file, e);
            if (!readOnly) {
                throw problem;
            }
            Journal salvaged = SalvagedJournal.inPlaceOf(file, problem);
            damage = salvaged.damage();
            return salvaged.events();
        }
    }

    /** The events whose text can be understood. */
    private List<SessionEvent> readable() throws SQLException {
        List<SessionEvent> events = new ArrayList<>();
        long read = 0;
        boolean gap = false;
        int passedOver = 0;
        int changed = 0;
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT seq, body FROM events ORDER BY seq")) {
            while (rows.next()) {
                gap |= rows.getLong(1) != read + 1;
                read = rows.getLong(1);
                String text = rows.getString(2);
                Optional<SessionEvent> event = readable(text);
                event.ifPresent(events::add);
                passedOver += event.isPresent() ? 0 : 1;
                changed += event.isPresent() && CheckedText.state(text) == CheckedText.State.CHANGED ? 1 : 0;
            }
        }
        if (last.isEmpty()) {
            last = OptionalLong.of(read);
        }
        damage = damage(gap, passedOver, changed, events.size() + passedOver)
                .map(what -> new ProblemException(what, file.toString(), SqlProblems.remedy(file)));
        return events;
    }

    private static Optional<String> damage(boolean gap, int passedOver, int changed, int all) {
        if (passedOver > 0) {
            return Optional.of(passedOver + " of " + all + " entries cannot be read");
        }
        if (changed > 0) {
            return Optional.of(
                    changed + " of " + all + " entries " + (changed == 1 ? "has" : "have") + " changed on the disk");
        }
        return gap ? Optional.of("some entries are missing") : Optional.empty();
    }

    /** The event of a text; a damaged row may have none. */
    private Optional<SessionEvent> readable(@Nullable String text) {
        try {
            return text == null ? Optional.empty() : Optional.of(EventCodec.decode(text, file.toString()));
        } catch (ProblemException damaged) {
            return Optional.empty();
        }
    }

    @Override
    public Optional<ProblemException> damage() {
        return damage;
    }

    @Override
    public void close() {
        if (!closed) {
            closed = true;
            letGo();
        }
    }

    private void write(List<SessionEvent> events) throws SQLException, ProblemException {
        List<String> bodies = events.stream().map(SqliteJournal::body).toList();
        // The statement is prepared each time: the driver gives up a statement that has failed.
        try (Statement transaction = connection.createStatement();
                PreparedStatement insert =
                        connection.prepareStatement("INSERT INTO events (seq, body) VALUES (?, ?)")) {
            transaction.execute("BEGIN IMMEDIATE");
            long before = lastOnDisk(transaction);
            last = OptionalLong.of(before);
            for (int i = found(bodies, before); i < bodies.size(); i++) {
                insert.setLong(1, before + i + 1);
                insert.setString(2, bodies.get(i));
                insert.executeUpdate();
            }
            transaction.execute("COMMIT");
            last = OptionalLong.of(before + bodies.size());
        }
    }

    /** The event as SQLite will give it back: half a surrogate pair is no UTF-8 and becomes a question mark. */
    private static String body(SessionEvent event) {
        return CheckedText.of(
                new String(EventCodec.encode(event).getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8));
    }

    private long lastOnDisk(Statement statement) throws SQLException {
        if (last.isPresent()) {
            return last.getAsLong();
        }
        try (ResultSet row = statement.executeQuery("SELECT max(seq) FROM events")) {
            return row.getLong(1);
        }
    }

    /** How many events, from the first, an earlier append left on disk although it was answered with an error. */
    private int found(List<String> bodies, long before) throws SQLException, ProblemException {
        int found = 0;
        try (PreparedStatement query =
                connection.prepareStatement("SELECT body FROM events WHERE seq > ? ORDER BY seq LIMIT ?")) {
            query.setLong(1, before);
            query.setInt(2, bodies.size());
            try (ResultSet rows = query.executeQuery()) {
                while (rows.next()) {
                    if (!bodies.get(found).equals(rows.getString(1))) {
                        throw new ProblemException(
                                "was written by another process meanwhile",
                                file.toString(),
                                "close the session everywhere, then open it again");
                    }
                    found++;
                }
            }
        }
        return found;
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
