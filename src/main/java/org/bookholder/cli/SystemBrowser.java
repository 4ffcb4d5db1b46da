package org.bookholder.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.LongPredicate;
import java.util.function.UnaryOperator;

/**
 * Opens addresses in the user's browser by the command that the system has for it.
 *
 * @param command the command, to which the address is added; empty if nothing on this machine can show a page
 */
record SystemBrowser(Optional<List<String>> command) {
    private static final long STEP_MILLIS = 100;

    /** A command that runs for longer has become the browser itself, or has started one. */
    private static final int STEPS = 30;

    /** The browser of this machine. */
    static SystemBrowser ofMachine() {
        return of(System.getProperty("os.name", ""), name -> System.getenv().getOrDefault(name, ""));
    }

    /** The browser of a system, by its name and the variables of its environment. */
    static SystemBrowser of(String system, UnaryOperator<String> variables) {
        if (system.startsWith("Mac")) {
            return new SystemBrowser(Optional.of(List.of("open")));
        }
        if (system.startsWith("Windows")) {
            return new SystemBrowser(Optional.of(List.of("rundll32", "url.dll,FileProtocolHandler")));
        }
        // Without a display xdg-open would start a browser in the terminal.
        boolean display = !variables.apply("DISPLAY").isEmpty()
                || !variables.apply("WAYLAND_DISPLAY").isEmpty();
        return new SystemBrowser(display ? Optional.of(List.of("xdg-open")) : Optional.empty());
    }

    /**
     * Opens an address; says whether that has worked as far as can be told.
     *
     * @param waits waits so many milliseconds; true if the program is to end
     */
    boolean open(String address, LongPredicate waits) {
        if (command.isEmpty()) {
            return false;
        }
        List<String> all = new ArrayList<>(command.get());
        all.add(address);
        try {
            Process process = new ProcessBuilder(all)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            process.getOutputStream().close();
            for (int i = 0; i < STEPS && process.isAlive(); i++) {
                if (waits.test(STEP_MILLIS)) {
                    return true;
                }
            }
            return process.isAlive() || process.exitValue() == 0;
        } catch (IOException e) {
            return false;
        }
    }
}
