package org.bookholder.problem;

import java.io.IOException;
import java.util.Objects;

/**
 * A problem outside the program that a person can solve: bad input, a full disk, a missing device.
 *
 * <p>The message is one plain line: what is wrong, where, and what to do. It is printed without a stack trace and the
 * program ends with exit status 2. A fault of the program itself is never reported this way.
 */
public final class ProblemException extends Exception {
    private static final long serialVersionUID = 1L;

    private final String what;
    private final String where;
    private final String remedy;

    /**
     * Creates a problem.
     *
     * @param what what is wrong, a phrase without a full stop
     * @param where the file, file:line, device or option concerned
     * @param remedy what to do, an imperative phrase without a full stop
     */
    public ProblemException(String what, String where, String remedy) {
        this.what = Objects.requireNonNull(what);
        this.where = Objects.requireNonNull(where);
        this.remedy = Objects.requireNonNull(remedy);
    }

    /** Creates a problem with the exception that revealed it. The cause goes to the log, not into the message. */
    public ProblemException(String what, String where, String remedy, Throwable cause) {
        this(what, where, remedy);
        initCause(cause);
    }

    /** The problem that a temporary file cannot be written. */
    public static ProblemException noTemporaryRoom(IOException cause) {
        return new ProblemException(
                "there is no room for temporary files (" + cause.getMessage() + ")",
                System.getProperty("java.io.tmpdir", "the temporary folder"),
                "free some space there",
                cause);
    }

    /** Always one line: control characters from file names or other programs' messages become blanks. */
    @Override
    public String getMessage() {
        return (where + ": " + what + "; " + remedy).replaceAll("[\\p{Cntrl}\u2028\u2029]+", " ");
    }

    /** What is wrong. */
    public String what() {
        return what;
    }

    /** The file, file:line, device or option concerned. */
    public String where() {
        return where;
    }

    /** What the user can do about it. */
    public String remedy() {
        return remedy;
    }
}
