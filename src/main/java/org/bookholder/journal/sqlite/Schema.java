package org.bookholder.journal.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.bookholder.problem.ProblemException;

/** The schema of a journal's database, and how to recognise a journal and its version. */
final class Schema {
    /** To be raised when earlier versions cannot read what this one writes. */
    static final int VERSION = 1;

    /** Marks the file as a journal of ours in SQLite's header: "BkHd". */
    static final int APPLICATION_ID = 0x426B_4864;

    /** The body holds kind and time; the columns are computed from it, for people who query the database. */
    private static final String EVENTS = "CREATE TABLE events ("
            + "seq INTEGER PRIMARY KEY, "
            + "body TEXT NOT NULL, "
            + "type TEXT GENERATED ALWAYS AS (body ->> '$.type') VIRTUAL, "
            + "at INTEGER GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL)";

    /** What is said of the database of another program. */
    static final String NO_JOURNAL = "is not a session's journal";

    /** What is said of a journal that has lost its beginning. */
    static final String DAMAGED = "is damaged";

    private Schema() {}

    /**
     * Checks that the database is a readable journal. If {@code create}, turns an empty one into a journal.
     *
     * @return false if it is empty: whoever was to create the journal was killed before
     */
    static boolean prepare(Connection connection, Path file, boolean create) throws SQLException, ProblemException {
        try (Statement statement = connection.createStatement()) {
            boolean empty = number(statement, "SELECT count(*) FROM sqlite_schema") == 0;
            if (empty && create) {
                create(connection, statement);
                return true;
            }
            if (empty) {
                return false;
            }
            if (number(statement, "PRAGMA application_id") != APPLICATION_ID) {
                throw new ProblemException(NO_JOURNAL, file.toString(), "name the folder of a session");
            }
            int version = number(statement, "PRAGMA user_version");
            if (version > VERSION) {
                throw new ProblemException(
                        "was written by a newer version of Bookholder (journal version " + version
                                + ", this program knows up to " + VERSION + ")",
                        file.toString(),
                        "open it with that version, or update this one");
            }
            return true;
        }
    }

    private static void create(Connection connection, Statement statement) throws SQLException {
        // In one transaction, so that a kill leaves either an empty database or a journal.
        connection.setAutoCommit(false);
        statement.execute("PRAGMA application_id = " + APPLICATION_ID);
        statement.execute("PRAGMA user_version = " + VERSION);
        statement.execute(EVENTS);
        connection.commit();
        connection.setAutoCommit(true);
    }

    private static int number(Statement statement, String query) throws SQLException {
        try (ResultSet row = statement.executeQuery(query)) {
            return row.getInt(1);
        }
    }
}
