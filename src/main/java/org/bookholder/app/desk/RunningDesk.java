package org.bookholder.app.desk;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.desk.AccessControl;
import org.bookholder.desk.DeskCredentials;
import org.bookholder.desk.DeviceFile;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.desk.http.DeskAddress;
import org.bookholder.desk.http.DeskServer;
import org.bookholder.problem.ProblemException;

/** An open desk. */
public final class RunningDesk implements AutoCloseable {
    private final DeskServer server;
    private final DeskCredentials keys;
    private final AccessControl admission;

    private RunningDesk(DeskServer server, AccessControl admission, DeskCredentials keys) {
        this.server = server;
        this.admission = admission;
        this.keys = keys;
    }

    /**
     * Opens a desk.
     *
     * @param folder where its credentials are stored, so that pages can reconnect after a restart of the program
     * @param shelf the sessions it shows
     */
    public static RunningDesk of(Environment here, DeskRequest request, Path folder, SessionDirectory shelf)
            throws ProblemException {
        SecureRandom random = new SecureRandom();
        DeskCredentials kept = DeskCredentials.of(folder, random);
        AccessControl admission = new AccessControl(
                kept, request.network(), random, here.nanoTime(), here.clock(), DeviceFile.in(folder));
        DeskServer server = DeskServer.open(request.address(kept.port()), shelf, admission, here.nanoTime());
        DeskCredentials keys = kept.at(server.port());
        try {
            keys.keep(folder);
            return new RunningDesk(server, admission, keys);
        } catch (ProblemException e) {
            server.close();
            throw e;
        }
    }

    /**
     * Copies the credentials of an earlier session's desk, so that a producer's open page continues with the next
     * lesson. A folder that already has credentials, or cannot be written, stays as it is.
     */
    public static void letIn(Path earlier, Path folder) {
        if (DeskCredentials.kept(folder).isEmpty()) {
            DeskCredentials.kept(earlier).ifPresent(keys -> {
                keep(keys, folder);
                DeviceFile.in(folder).takeOver(DeviceFile.in(earlier));
            });
        }
    }

    private static void keep(DeskCredentials keys, Path folder) {
        try {
            keys.keep(folder);
        } catch (ProblemException e) {
            // New credentials cannot be stored either; that is reported when the desk is opened.
        }
    }

    /** The address to open on this machine. */
    public String address() {
        return "http://127.0.0.1:" + server.port() + "/#" + keys.key();
    }

    /** How other devices in the network reach it now; the codes are new each day. Empty if it is for this machine only. */
    public Optional<NetworkAddress> network() {
        String host = DeskAddress.addresses().stream().findFirst().orElse("this-machine");
        return admission
                .actCode()
                .flatMap(act -> admission.lookCode().map(look -> new NetworkAddress(host, server.port(), act, look)));
    }

    /**
     * How other devices reach a desk.
     *
     * @param host this machine's address in its network
     * @param port the desk's port
     * @param joinCode the code for people who may act
     * @param lookCode the code for people who may only look
     */
    public record NetworkAddress(String host, int port, String joinCode, String lookCode) {}

    /** The text in the reading window before the lesson begins; empty if the desk is for this machine only. */
    public String invitation() {
        return network()
                .map(there -> "desk: " + there.host() + ":" + there.port() + "  join code " + there.joinCode())
                .orElse("");
    }

    @Override
    public void close() {
        server.close();
    }
}
