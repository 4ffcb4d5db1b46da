package org.bookholder.desk.http;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.eclipse.jetty.util.thread.Scheduler;
import org.jspecify.annotations.Nullable;

/**
 * All open event streams, and the heartbeat that keeps their connections alive. When a page reconnects, its previous
 * stream is closed, because the program may not notice a dead connection for a quarter of an hour. Safe for use by
 * several threads.
 */
final class EventStreams {
    private static final int MOST = 64;
    private static final Duration BEAT = Duration.ofSeconds(5);

    private final List<Told> streams = new ArrayList<>();
    private @Nullable Scheduler scheduler;

    /** The stream of a page. The page chooses its own name, which may be empty. */
    private record Told(String page, EventStream stream) {
        boolean over() {
            return stream.over();
        }
    }

    /** Starts the heartbeat, which stops with the server. */
    synchronized void beatWith(Scheduler given) {
        scheduler = given;
        next();
    }

    /** Adds a stream and closes the previous one of the same page; false if there are too many. */
    boolean add(String page, Supplier<EventStream> begin) {
        List<Told> before;
        synchronized (this) {
            streams.removeIf(Told::over);
            before = streams.stream()
                    .filter(told -> !page.isEmpty() && told.page().equals(page))
                    .toList();
            if (before.isEmpty() && streams.size() >= MOST) {
                return false;
            }
            streams.removeAll(before);
        }
        before.forEach(told -> told.stream().end());
        EventStream stream = begin.get();
        synchronized (this) {
            streams.add(new Told(page, stream));
        }
        return true;
    }

    /** Tells all pages that the desk is closed in order, so that they need not call it a lost connection. */
    void sayGoodbye() {
        List<Told> all;
        synchronized (this) {
            all = List.copyOf(streams);
        }
        all.forEach(told -> told.stream().sayGoodbye());
    }

    void endAll() {
        List<Told> all;
        synchronized (this) {
            scheduler = null;
            all = List.copyOf(streams);
            streams.clear();
        }
        all.forEach(told -> told.stream().end());
    }

    private void beat() {
        List<Told> all;
        synchronized (this) {
            streams.removeIf(Told::over);
            all = List.copyOf(streams);
            next();
        }
        all.forEach(told -> told.stream().beat());
    }

    private void next() {
        if (scheduler != null) {
            scheduler.schedule(this::beat, BEAT);
        }
    }
}
