package org.bookholder.desk.http;

import java.io.IOException;
import java.time.Duration;
import java.util.function.LongSupplier;
import org.bookholder.desk.AccessControl;
import org.bookholder.desk.Devices.Device;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.problem.ProblemException;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.NetworkConnectionLimit;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.component.LifeCycle;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/**
 * Serves the desk. The server's own few threads reach a session only through {@link SessionDirectory}. What is sent to a page
 * is queued and bounded, so that no page can slow anything down.
 */
public final class DeskServer implements AutoCloseable {
    private static final int MOST_THREADS = 12;
    private static final int LEAST_THREADS = 2;
    private static final int MOST_CONNECTIONS = 256;
    private static final int MOST_HEADER_BYTES = 8 * 1024;

    /** A connection without traffic for this long is closed; event streams are kept alive by their heartbeat. */
    private static final long IDLE_MILLIS = 20_000;

    private static final long STOP_MILLIS = 500;

    private final Server server;
    private final ServerConnector connector;
    private final Router router;

    private DeskServer(Server server, ServerConnector connector, Router router) {
        this.server = server;
        this.router = router;
        this.connector = connector;
    }

    /**
     * Opens a desk.
     *
     * @throws ProblemException if there is no port to listen on
     */
    public static DeskServer open(
            DeskAddress door, SessionDirectory shelf, AccessControl admission, LongSupplier nanoTime)
            throws ProblemException {
        return open(door, shelf, admission, nanoTime, IDLE_MILLIS);
    }

    /**
     * Opens a desk that closes connections after {@code idle} milliseconds without traffic, and those on which no whole request has
     * come for as long.
     */
    static DeskServer open(
            DeskAddress door, SessionDirectory shelf, AccessControl admission, LongSupplier nanoTime, long idle)
            throws ProblemException {
        try {
            return at(door.port(), door, shelf, admission, nanoTime, idle);
        } catch (IOException e) {
            if (door.insist() || door.port() == 0) {
                throw new ProblemException(
                        "the desk cannot listen here (" + e.getMessage() + ")",
                        door.bindAddress() + ":" + door.port(),
                        "choose another port with --desk-port",
                        e);
            }
        }
        return open(new DeskAddress(door.network(), 0, true, door.names()), shelf, admission, nanoTime, idle);
    }

    private static DeskServer at(
            int port,
            DeskAddress door,
            SessionDirectory shelf,
            AccessControl admission,
            LongSupplier nanoTime,
            long idle)
            throws IOException {
        QueuedThreadPool threads = new QueuedThreadPool(MOST_THREADS, LEAST_THREADS);
        threads.setName("bookholder desk");
        threads.setDaemon(true);
        Server server = new Server(threads);
        server.setStopTimeout(STOP_MILLIS);
        HttpConfiguration http = new HttpConfiguration();
        http.setSendServerVersion(false);
        // Pages take the time of day from it.
        http.setSendDateHeader(true);
        http.setRequestHeaderSize(MOST_HEADER_BYTES);
        ServerConnector connector = new ServerConnector(server, 1, 1, new HttpConnectionFactory(http));
        connector.setHost(door.bindAddress());
        connector.setPort(port);
        connector.setIdleTimeout(idle);
        ConnectionLimiter connections =
                new ConnectionLimiter(Duration.ofMillis(idle).toNanos(), nanoTime);
        connector.addBean(connections);
        server.addConnector(connector);
        server.addBean(new NetworkConnectionLimit(MOST_CONNECTIONS, connector));
        EventStreams streams = new EventStreams(id -> admission.devices().in(id));
        Joining joining = new Joining(admission, connector::getLocalPort, PeerUser.OF_MACHINE, streams);
        Router router = new Router(shelf, admission, joining, streams, connections);
        Handler filtered = new RequestFilter(door, connector::getLocalPort, router);
        Handler limited =
                RateLimit.before(filtered, request -> joining.device(request).map(Device::id));
        server.setHandler(new RequestDeadline(connections, limited));
        server.setErrorHandler(new PlainResponses());
        try {
            server.start();
            return new DeskServer(server, connector, router);
        } catch (IOException e) {
            stop(server);
            throw e;
        } catch (Exception e) {
            stop(server);
            throw new IllegalStateException("the web server must start", e);
        }
    }

    /** The port it listens on. */
    public int port() {
        return connector.getLocalPort();
    }

    /** Tells the pages that this is an orderly end, closes all connections and stops. */
    @Override
    public void close() {
        router.sayGoodbye();
        stop(server);
    }

    private static void stop(Server server) {
        try {
            LifeCycle.stop(server);
        } catch (RuntimeException e) {
            // The server ends with the program at the latest; the session loses nothing.
        }
    }
}
