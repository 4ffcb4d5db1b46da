package org.bookholder.journal.sqlite;

import java.nio.file.Path;
import java.sql.SQLException;
import org.bookholder.problem.ProblemException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Turns SQLite's errors into problems that a person understands. Result codes: sqlite.org/rescode.html. */
final class SqlProblems {
    private SqlProblems() {}

    static ProblemException of(Path file, SQLException cause) {
        return switch (primary(cause)) {
            case SQLITE_FULL ->
                problem("the disk is full", file, "free some space, or choose a folder on another disk", cause);
            case SQLITE_BUSY, SQLITE_LOCKED, SQLITE_PROTOCOL ->
                problem("is open in another process", file, "close the session there first", cause);
            case SQLITE_READONLY, SQLITE_PERM, SQLITE_AUTH ->
                problem("cannot be written", file, "allow writing there, or choose another folder", cause);
            case SQLITE_CANTOPEN ->
                problem("cannot be opened", file, "check that its folder is there and may be written", cause);
            case SQLITE_NOTADB -> problem("is not a session's journal", file, "name the folder of a session", cause);
            case SQLITE_CORRUPT -> problem(Schema.DAMAGED, file, remedy(file), cause);
            case SQLITE_IOERR ->
                problem(
                        "cannot be read or written (" + message(cause) + ")",
                        file,
                        "check the disk, or choose a folder on another one",
                        cause);
            default -> problem("does not work (" + message(cause) + ")", file, "open the session again", cause);
        };
    }

    /** Whether it is not the disk that refuses, but one value that no disk could take. */
    static boolean tooLarge(SQLException cause) {
        return primary(cause) == SQLiteErrorCode.SQLITE_TOOBIG;
    }

    /** Whether what is wrong may lie in the file itself. */
    static boolean damaged(SQLException cause) {
        return switch (primary(cause)) {
            case SQLITE_CORRUPT, SQLITE_NOTADB, SQLITE_ERROR, SQLITE_IOERR -> true;
            default -> false;
        };
    }

    /** What to do about a damaged journal. */
    static String remedy(Path file) {
        return "run 'bookholder repair " + file.toAbsolutePath().getParent() + "' to save what can be read";
    }

    private static ProblemException problem(String what, Path file, String remedy, SQLException cause) {
        return new ProblemException(what, file.toString(), remedy, cause);
    }

    /** The low byte of a result code is its kind; the rest is detail that a user does not need. */
    private static SQLiteErrorCode primary(SQLException cause) {
        int code = cause instanceof SQLiteException e ? e.getResultCode().code : cause.getErrorCode();
        return SQLiteErrorCode.getErrorCode(code & 0xFF);
    }

    private static String message(SQLException cause) {
        String message = cause.getMessage();
        return message == null ? cause.getClass().getSimpleName() : message;
    }
}
