package org.bookholder.cli;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.List;
import java.util.Locale;
import org.bookholder.desk.AccessControl;
import org.bookholder.desk.DeskCredentials;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.desk.http.DeskAddress;
import org.bookholder.desk.http.DeskServer;
import org.bookholder.problem.ProblemException;

/** A desk that is open. */
final class OpenDesk implements AutoCloseable {
    private final DeskServer server;
    private final DeskCredentials keys;
    private final boolean network;

    private OpenDesk(DeskServer server, DeskCredentials keys, boolean network) {
        this.server = server;
        this.keys = keys;
        this.network = network;
    }

    /**
     * Opens a desk.
     *
     * @param folder where its keys are kept, so that pages find back to it when the program was started again
     * @param shelf what is to be seen at it
     */
    static OpenDesk of(Surroundings here, DeskOptions options, Path folder, SessionDirectory shelf)
            throws ProblemException {
        SecureRandom random = new SecureRandom();
        DeskCredentials kept = DeskCredentials.of(folder, random);
        AccessControl admission = new AccessControl(kept, options.network(), random, here.nanoTime());
        DeskServer server = DeskServer.open(options.door(kept.port()), shelf, admission);
        DeskCredentials keys = kept.at(server.port());
        try {
            keys.keep(folder);
            return new OpenDesk(server, keys, options.network());
        } catch (ProblemException e) {
            server.close();
            throw e;
        }
    }

    /**
     * Lets those into a session's desk who were let in at an earlier one: the page that a producer has open goes on with the
     * next lesson. A folder that has keys already, or takes none, stays as it is.
     */
    static void letIn(Path earlier, Path folder) {
        if (DeskCredentials.kept(folder).isEmpty()) {
            DeskCredentials.kept(earlier).ifPresent(keys -> keep(keys, folder));
        }
    }

    private static void keep(DeskCredentials keys, Path folder) {
        try {
            keys.keep(folder);
        } catch (ProblemException e) {
            // Fresh keys cannot be kept either, which is told when the desk is opened.
        }
    }

    /** The address to open on this machine. */
    String address() {
        return "http://127.0.0.1:" + server.port() + "/#" + keys.key();
    }

    /** Says where it can be reached. */
    void tell(Terminal terminal) {
        terminal.out().println("Desk: " + address());
        if (network) {
            List<String> addresses = DeskAddress.addresses();
            String host = addresses.isEmpty() ? "this-machine" : addresses.get(0);
            terminal.out()
                    .printf(
                            Locale.ROOT,
                            "Desk on other devices: http://%s:%d/  join code %s; to look only %s%n",
                            host,
                            server.port(),
                            keys.act(),
                            keys.look());
        }
        terminal.out().flush();
    }

    /** What the reading window says of it before the lesson is begun; empty if it is for this machine only. */
    String invitation() {
        if (!network) {
            return "";
        }
        String host = DeskAddress.addresses().stream().findFirst().orElse("this machine");
        return "desk: " + host + ":" + server.port() + "  join code " + keys.act();
    }

    @Override
    public void close() {
        server.close();
    }
}
