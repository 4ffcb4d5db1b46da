package org.bookholder.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * Whether the system has a dialog for files. macOS and Windows have; elsewhere a desktop's program shows it, on a display. Where there is
 * none, the library that asks for it would ask in the terminal.
 */
final class DialogPrograms {
    /** Those that the library knows and that show a dialog of a desktop. */
    private static final List<String> PROGRAMS =
            List.of("zenity", "kdialog", "yad", "qarma", "matedialog", "shellementary");

    private DialogPrograms() {}

    /** Whether this machine has one. */
    static boolean onThisMachine() {
        return on(System.getProperty("os.name", ""), name -> System.getenv().getOrDefault(name, ""));
    }

    /** Whether a system has one, by its name and the variables of its environment. */
    static boolean on(String system, UnaryOperator<String> variables) {
        if (system.startsWith("Mac") || system.startsWith("Windows")) {
            return true;
        }
        boolean display = !variables.apply("DISPLAY").isEmpty()
                || !variables.apply("WAYLAND_DISPLAY").isEmpty();
        return display
                && List.of(variables.apply("PATH").split(":", -1)).stream().anyMatch(DialogPrograms::holdsOne);
    }

    /** Ends the programs that show a dialog for a process; Windows shows it in the process itself. */
    static void endThoseOf(ProcessHandle process) {
        process.descendants().filter(DialogPrograms::showsDialog).forEach(ProcessHandle::destroy);
    }

    private static boolean showsDialog(ProcessHandle process) {
        Optional<Path> program =
                process.info().command().map(command -> Path.of(command).getFileName());
        return program.map(Path::toString)
                .filter(name -> PROGRAMS.contains(name) || name.equals("osascript"))
                .isPresent();
    }

    private static boolean holdsOne(String folder) {
        return !folder.isEmpty() && PROGRAMS.stream().anyMatch(name -> Files.isExecutable(Path.of(folder, name)));
    }
}
