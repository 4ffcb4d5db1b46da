package org.bookholder.desk.http;

import java.nio.ByteBuffer;
import java.nio.channels.ClosedChannelException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import org.bookholder.desk.EventFeed;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/**
 * The event stream of one page. What the page cannot receive yet waits in a queue; if more than {@value #MOST_BYTES} bytes
 * wait, the stream is closed, and the page is sent a snapshot when it reconnects. Safe for use by several threads.
 */
final class EventStream implements EventFeed.Listener {
    static final int MOST_BYTES = 4 << 20;

    /** Shows the page that the program is still there, and the program that the page is. */
    private static final String BEAT = "event: beat\ndata: well\n\n";

    private static final String GOODBYE = "event: closed\ndata: well\n\n";

    private static final String HELLO = "retry: 1000\n\n";

    private final Response response;
    private final Callback callback;
    private final Deque<ByteBuffer> waiting = new ArrayDeque<>();
    private int waitingBytes;
    private boolean writing;
    private boolean ended;
    private Runnable stop = () -> {};

    private EventStream(Response response, Callback callback) {
        this.response = response;
        this.callback = callback;
    }

    static EventStream begin(EventFeed feed, Request request, Response response, Callback callback) {
        response.getHeaders().put(HttpHeader.CONTENT_TYPE, "text/event-stream");
        EventStream stream = new EventStream(response, callback);
        request.addIdleTimeoutListener(timeout -> stream.idle());
        stream.send(StandardCharsets.UTF_8.encode(HELLO));
        String lastId = request.getHeaders().get("Last-Event-ID");
        stream.stopWith(feed.listen(stream, lastId == null ? "" : lastId));
        return stream;
    }

    /** Sends a heartbeat, unless other messages are waiting. */
    void beat() {
        synchronized (this) {
            if (writing) {
                return;
            }
        }
        send(StandardCharsets.UTF_8.encode(BEAT));
    }

    void sayGoodbye() {
        send(StandardCharsets.UTF_8.encode(GOODBYE));
    }

    boolean over() {
        synchronized (this) {
            return ended;
        }
    }

    @Override
    public void send(ByteBuffer message) {
        boolean first;
        synchronized (this) {
            if (ended) {
                return;
            }
            waiting.add(message);
            waitingBytes += message.remaining();
            if (waitingBytes > MOST_BYTES) {
                end();
                return;
            }
            first = !writing;
            writing = true;
        }
        if (first) {
            writeNext();
        }
    }

    private void writeNext() {
        ByteBuffer next;
        synchronized (this) {
            ByteBuffer oldest = waiting.poll();
            if (oldest == null || ended) {
                writing = false;
                return;
            }
            waitingBytes -= oldest.remaining();
            next = oldest;
        }
        response.write(false, next, Callback.from(this::writeNext, failure -> end()));
    }

    /** Whether to close the stream after an idle time; not if there was simply nothing to send. */
    private boolean idle() {
        synchronized (this) {
            return writing;
        }
    }

    private void stopWith(Runnable how) {
        boolean already;
        synchronized (this) {
            stop = how;
            already = ended;
        }
        if (already) {
            how.run();
        }
    }

    /** Closes the stream. */
    @Override
    public void end() {
        Runnable how;
        synchronized (this) {
            if (ended) {
                return;
            }
            ended = true;
            waiting.clear();
            how = stop;
        }
        how.run();
        callback.failed(new ClosedChannelException());
    }
}
