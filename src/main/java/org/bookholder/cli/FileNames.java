package org.bookholder.cli;

import java.nio.file.InvalidPathException;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.bookholder.problem.ProblemException;

/**
 * Whether files can be named as they are. On Linux the Java virtual machine takes their names in the character set of the
 * locale, which is ASCII in the locale C and in one that is not installed. The launcher sets another one then; this is for where it
 * was not used or has none.
 */
final class FileNames {
    /** Stands for what could not be decoded. */
    private static final String LOST = "\ufffd";

    private static final List<String> FOLDERS = List.of("XDG_DATA_HOME", "XDG_CONFIG_HOME");

    private FileNames() {}

    /** Refuses arguments, and folders of this process and its user, with letters that were lost. */
    static void check(String... arguments) throws ProblemException {
        Map<String, String> variables = System.getenv();
        Stream<String> names = Stream.concat(
                Stream.concat(Stream.of(arguments), FOLDERS.stream().map(name -> variables.getOrDefault(name, ""))),
                Stream.of(System.getProperty("user.dir", ""), System.getProperty("user.home", "")));
        String lost = names.filter(name -> name.contains(LOST)).findFirst().orElse("");
        if (!lost.isEmpty()) {
            throw problem(lost, new InvalidPathException(lost, "letters were lost"));
        }
    }

    /** The problem that a file cannot be named. */
    static ProblemException problem(String name, InvalidPathException cause) {
        return new ProblemException(
                "a file or folder with this name cannot be opened or made in this locale ("
                        + System.getProperty("sun.jnu.encoding", "unknown") + ")",
                name,
                "set LC_ALL=C.UTF-8 and start again, or rename it",
                cause);
    }
}
