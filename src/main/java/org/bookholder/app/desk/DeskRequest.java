package org.bookholder.app.desk;

import java.util.List;
import java.util.Optional;
import org.bookholder.desk.http.DeskAddress;

/**
 * How a desk should be reachable.
 *
 * @param port its port, 1 to 65535; empty for the one it had before in this session, or any free one
 * @param network whether other devices in the network can open it, too
 * @param names further host names under which it can be reached, as behind a TLS proxy
 * @param hosted whether whoever asks for it shows the session at an address of its own; then no other one is opened
 */
public record DeskRequest(Optional<Integer> port, boolean network, List<String> names, boolean hosted) {
    /** With an address of its own. */
    public DeskRequest(Optional<Integer> port, boolean network, List<String> names) {
        this(port, network, names, false);
    }

    /** Shown at the address of whoever asks for it. */
    public static DeskRequest atHome() {
        return new DeskRequest(Optional.empty(), false, List.of(), true);
    }

    /** Reachable from this machine only, at the usual port. */
    public static DeskRequest usual() {
        return new DeskRequest(Optional.empty(), false, List.of());
    }

    /** The address to open; {@code usual} is the port that the desk had before, or 0. */
    DeskAddress address(int usual) {
        return new DeskAddress(network, port.orElse(usual), port.isPresent(), names);
    }
}
