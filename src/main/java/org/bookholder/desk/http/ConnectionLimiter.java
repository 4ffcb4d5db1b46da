package org.bookholder.desk.http;

import java.net.InetSocketAddress;
import java.net.SocketAddress;
import java.util.Collections;
import java.util.HashMap;
import java.util.Map;
import org.eclipse.jetty.io.Connection;

/**
 * Limits the connections of one address to what pages on one machine need, so that no machine can use up all connections.
 * Jetty limits only the connections of everybody together. Safe for use by several threads.
 */
final class ConnectionLimiter implements Connection.Listener {
    /** Six for each of twenty browsers, which may all be behind one proxy. */
    static final int MOST = 120;

    private final Map<Connection, String> addresses = new HashMap<>();

    @Override
    public synchronized void onOpened(Connection connection) {
        String address = address(connection);
        addresses.put(connection, address);
        if (Collections.frequency(addresses.values(), address) > MOST) {
            connection.close();
        }
    }

    @Override
    public synchronized void onClosed(Connection connection) {
        addresses.remove(connection);
    }

    private static String address(Connection connection) {
        SocketAddress remote = connection.getEndPoint().getRemoteSocketAddress();
        return remote instanceof InetSocketAddress known ? known.getHostString() : "";
    }
}
