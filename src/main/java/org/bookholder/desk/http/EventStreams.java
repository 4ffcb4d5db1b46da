package org.bookholder.desk.http;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
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
    private final Predicate<String> in;
    private @Nullable Scheduler scheduler;

    /** Streams to devices as long as {@code in} says of their ids that they are in. */
    EventStreams(Predicate<String> in) {
        this.in = in;
    }

    /** The stream of a page of a device. The page chooses its own name, which may be empty. */
    private record Told(String page, String device, EventStream stream) {
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
    boolean add(String page, String device, Supplier<EventStream> begin) {
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
            streams.add(new Told(page, device, stream));
        }
        return true;
    }

    /** Ends the streams of a device that was let out. */
    void endOf(String device) {
        List<Told> out;
        synchronized (this) {
            out = streams.stream().filter(told -> told.device().equals(device)).toList();
            streams.removeAll(out);
        }
        out.forEach(told -> told.stream().end());
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
        for (Told told : all) {
            if (in.test(told.device())) {
                told.stream().beat();
            } else {
                told.stream().end();
            }
        }
    }

    private void next() {
        if (scheduler != null) {
            scheduler.schedule(this::beat, BEAT);
        }
    }
}
