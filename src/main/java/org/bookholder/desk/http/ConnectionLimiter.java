package org.bookholder.desk.http;

import java.net.InetSocketAddress;
import java.net.SocketAddress;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.eclipse.jetty.io.Connection;

/**
 * Limits how many connections there are, from one address and in all, and for how long one may go without a whole request. Jetty's
 * own idle time begins anew with each byte. Where there are too many, the one that has waited longest makes room, so that nobody
 * is kept out by connections on which nothing is asked; those of devices that were let in stay. Safe for use by several threads.
 */
final class ConnectionLimiter implements Connection.Listener {
    /** Six for each of twenty browsers, which may all be behind one proxy. */
    static final int MOST = 120;

    /** From all addresses; more than one machine can take up. */
    static final int MOST_IN_ALL = 240;

    private final long deadlineNanos;
    private final LongSupplier nanoTime;
    private final Map<Connection, Known> all = new LinkedHashMap<>();

    private static final class Known {
        final String address;
        boolean letIn;
        boolean answering;
        long waitsSince;

        Known(String address, long now) {
            this.address = address;
            this.waitsSince = now;
        }
    }

    /** A whole request has to come within {@code deadlineNanos}, after the connection was opened or the last answer was sent. */
    ConnectionLimiter(long deadlineNanos, LongSupplier nanoTime) {
        this.deadlineNanos = deadlineNanos;
        this.nanoTime = nanoTime;
    }

    @Override
    public void onOpened(Connection connection) {
        Optional<Connection> tooMany;
        synchronized (this) {
            String address = address(connection);
            all.put(connection, new Known(address, nanoTime.getAsLong()));
            tooMany = tooMany(connection, address);
            tooMany.ifPresent(all::remove);
        }
        tooMany.ifPresent(Connection::close);
    }

    /** The connection that has to go since another one was opened, if there are too many now. */
    private Optional<Connection> tooMany(Connection newest, String address) {
        boolean fromOne = all.values().stream()
                        .filter(known -> known.address.equals(address))
                        .count()
                > MOST;
        if (!fromOne && all.size() <= MOST_IN_ALL) {
            return Optional.empty();
        }
        // They are in the order in which they were opened.
        Optional<Connection> idle = Optional.empty();
        for (Map.Entry<Connection, Known> entry : all.entrySet()) {
            Known known = entry.getValue();
            boolean may = !known.letIn && !known.answering && entry.getKey() != newest;
            if (may && (!fromOne || known.address.equals(address))) {
                idle = Optional.of(entry.getKey());
                break;
            }
        }
        return idle.isPresent() ? idle : Optional.of(newest);
    }

    @Override
    public synchronized void onClosed(Connection connection) {
        all.remove(connection);
    }

    /** A whole request has come and is being answered. */
    synchronized void answering(Connection connection) {
        Known known = all.get(connection);
        if (known != null) {
            known.answering = true;
        }
    }

    /** The answer was sent; the next request may come. */
    synchronized void waiting(Connection connection) {
        Known known = all.get(connection);
        if (known != null) {
            known.answering = false;
            known.waitsSince = nanoTime.getAsLong();
        }
    }

    /** A device that was let in has asked for something on this connection. */
    synchronized void letIn(Connection connection) {
        Known known = all.get(connection);
        if (known != null) {
            known.letIn = true;
        }
    }

    /** Closes the connections on which no whole request has come in time. */
    void look() {
        List<Connection> late = new ArrayList<>();
        synchronized (this) {
            long now = nanoTime.getAsLong();
            all.forEach((connection, known) -> {
                if (!known.answering && now - known.waitsSince >= deadlineNanos) {
                    late.add(connection);
                }
            });
        }
        late.forEach(Connection::close);
    }

    private static String address(Connection connection) {
        SocketAddress remote = connection.getEndPoint().getRemoteSocketAddress();
        return remote instanceof InetSocketAddress known ? known.getHostString() : "";
    }
}
