package org.bookholder.desk.http;

import java.time.Duration;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.Scheduler;
import org.jspecify.annotations.Nullable;

/** Tells {@link ConnectionLimiter} when requests have come whole and when they are answered, and lets it look every second. */
final class RequestDeadline extends Handler.Wrapper {
    private static final Duration PERIOD = Duration.ofSeconds(1);

    private final ConnectionLimiter connections;
    private volatile @Nullable Scheduler scheduler;

    RequestDeadline(ConnectionLimiter connections, Handler next) {
        super(next);
        this.connections = connections;
    }

    @Override
    protected void doStart() throws Exception {
        super.doStart();
        scheduler = getServer().getScheduler();
        again();
    }

    @Override
    protected void doStop() throws Exception {
        scheduler = null;
        super.doStop();
    }

    private void again() {
        Scheduler running = scheduler;
        if (running != null) {
            running.schedule(
                    () -> {
                        connections.look();
                        again();
                    },
                    PERIOD);
        }
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        Connection connection = request.getConnectionMetaData().getConnection();
        Request.addCompletionListener(request, failure -> connections.waiting(connection));
        if (request.getLength() <= 0) {
            connections.answering(connection);
            return super.handle(request, response, callback);
        }
        return super.handle(new Counted(request, connection), response, callback);
    }

    /** A request whose body is still to come. */
    private final class Counted extends Request.Wrapper {
        private final Connection connection;

        Counted(Request request, Connection connection) {
            super(request);
            this.connection = connection;
        }

        @Override
        public Content.Chunk read() {
            Content.Chunk chunk = super.read();
            if (chunk != null && chunk.isLast()) {
                connections.answering(connection);
            }
            return chunk;
        }
    }
}
