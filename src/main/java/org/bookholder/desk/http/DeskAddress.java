package org.bookholder.desk.http;

import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Where a desk can be reached.
 *
 * @param network whether other machines can reach it, too
 * @param port the port, 0 for any that is free
 * @param insist whether it must be that port; otherwise a free one is used if that is taken
 * @param names further host names under which it can be reached, as behind a TLS proxy
 */
public record DeskAddress(boolean network, int port, boolean insist, List<String> names) {
    /** Copies the list and checks the range. */
    public DeskAddress {
        if (port < 0 || port > 0xFFFF) {
            throw new IllegalArgumentException("port (" + port + ") must be from 0 to 65535");
        }
        names = names.stream().map(name -> name.toLowerCase(Locale.ROOT)).toList();
    }

    /** Reachable from this machine only, at any port. */
    public static DeskAddress local() {
        return new DeskAddress(false, 0, false, List.of());
    }

    /** The address to bind to. */
    String bindAddress() {
        return network ? "0.0.0.0" : "127.0.0.1";
    }

    /** The host names that requests for this desk may carry. */
    Set<String> ownNames() {
        Set<String> own = new LinkedHashSet<>(List.of("127.0.0.1", "localhost"));
        if (network) {
            own.addAll(addresses());
        }
        return own;
    }

    /** The addresses of this machine in its networks. */
    public static List<String> addresses() {
        List<String> addresses = new ArrayList<>();
        try {
            for (NetworkInterface card : Collections.list(NetworkInterface.getNetworkInterfaces())) {
                for (InetAddress address : Collections.list(card.getInetAddresses())) {
                    if (address.getAddress().length == 4 && !address.isLoopbackAddress()) {
                        addresses.add(address.getHostAddress());
                    }
                }
            }
        } catch (SocketException e) {
            return List.of();
        }
        return addresses;
    }
}
