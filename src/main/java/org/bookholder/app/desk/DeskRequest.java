package org.bookholder.app.desk;

import java.util.List;
import java.util.Optional;
import org.bookholder.desk.http.DeskAddress;

/**
 * Where a desk can be reached.
 *
 * @param port its port, from 1 to 65535; empty for the one it had in this session, or any that is free
 * @param network whether other devices in the network can open it, too
 * @param names further names that it is reached by, as behind a TLS proxy
 */
public record DeskRequest(Optional<Integer> port, boolean network, List<String> names) {
    /** For this machine only, at the usual port. */
    public static DeskRequest usual() {
        return new DeskRequest(Optional.empty(), false, List.of());
    }

    /** The address to open; {@code usual} is the port that the desk had before, 0 if it had none. */
    DeskAddress address(int usual) {
        return new DeskAddress(network, port.orElse(usual), port.isPresent(), names);
    }
}
