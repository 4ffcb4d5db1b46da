package org.bookholder.problem;

import java.io.IOException;
import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import java.util.stream.Stream;

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
    private final ProblemException[] others;

    /**
     * Creates a problem.
     *
     * @param what what is wrong, a phrase without a full stop
     * @param where the file, file:line, device or option concerned
     * @param remedy what to do, an imperative phrase without a full stop
     */
    public ProblemException(String what, String where, String remedy) {
        this(what, where, remedy, new ProblemException[0]);
    }

    private ProblemException(String what, String where, String remedy, ProblemException[] others) {
        this.what = Objects.requireNonNull(what);
        this.where = Objects.requireNonNull(where);
        this.remedy = Objects.requireNonNull(remedy);
        this.others = others;
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

    /**
     * Several problems that stand in the way of the same thing, so that a person learns of all of them at once. What is asked of one
     * problem is answered for the first.
     *
     * @param problems at least one
     */
    public static ProblemException together(List<ProblemException> problems) {
        ProblemException first = problems.get(0);
        if (problems.size() == 1) {
            return first;
        }
        ProblemException all = new ProblemException(
                first.what,
                first.where,
                first.remedy,
                problems.subList(1, problems.size()).toArray(ProblemException[]::new));
        all.initCause(first);
        return all;
    }

    /** The message of each problem in it, one line each. */
    public List<String> lines() {
        return Stream.concat(Stream.of(line()), Stream.of(others).map(ProblemException::line))
                .toList();
    }

    /** Always one line: control characters from file names or other programs' messages become blanks. */
    @Override
    public String getMessage() {
        return String.join("; also ", lines());
    }

    private String line() {
        return oneLine(where + ": " + what + "; " + remedy);
    }

    /**
     * What is wrong, for a page: with the name of the file concerned, unless what is said holds it. Its folders are left out, as people
     * at other devices have nothing to do with them.
     */
    public String named() {
        String name = fileName();
        String plain = Pattern.quote(name.replaceFirst(":\\d+$", ""));
        boolean said = name.isEmpty()
                || Pattern.compile("(?<![\\p{L}\\d])" + plain + "(?![\\p{L}\\d])")
                        .matcher(what)
                        .find();
        return oneLine(said ? what : name + ": " + what);
    }

    /** The same with what to do. */
    public String told() {
        return named() + "; " + oneLine(remedy);
    }

    /** The last part of a path, with the number of a line if there is one; empty if {@code where} is no path. */
    private String fileName() {
        boolean path = where.matches("(?s).*[/\\\\].*") || where.matches("[^:]+\\.\\p{Alpha}\\p{Alnum}{0,4}(:\\d+)?");
        return path ? where.replaceFirst("[/\\\\]+$", "").replaceFirst("(?s)^.*[/\\\\]", "") : "";
    }

    private static String oneLine(String text) {
        return text.replaceAll("[\\p{Cntrl}\u2028\u2029]+", " ");
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
