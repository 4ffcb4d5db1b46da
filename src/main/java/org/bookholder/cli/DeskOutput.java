package org.bookholder.cli;

import java.util.Locale;
import org.bookholder.app.desk.RunningDesk;

/** Prints the desk's addresses. */
final class DeskOutput {
    private DeskOutput() {}

    static void print(RunningDesk desk, Terminal terminal) {
        terminal.out().println("Desk: " + desk.address());
        desk.network()
                .ifPresent(network -> terminal.out()
                        .printf(
                                Locale.ROOT,
                                "Desk on other devices: http://%s:%d/  join code %s; to look only %s%n",
                                network.host(),
                                network.port(),
                                network.joinCode(),
                                network.lookCode()));
        terminal.out().flush();
    }
}
