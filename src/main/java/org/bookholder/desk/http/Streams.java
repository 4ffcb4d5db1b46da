package org.bookholder.desk.http;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.eclipse.jetty.util.thread.Scheduler;
import org.jspecify.annotations.Nullable;

/** The pages that are being told, and the beat that keeps their connections. Safe for use by several threads. */
final class Streams {
    private static final int MOST = 64;
    private static final Duration BEAT = Duration.ofSeconds(5);

    private final List<EventStream> streams = new ArrayList<>();
    private @Nullable Scheduler scheduler;

    /** Begins to beat; the scheduler stops with the server. */
    synchronized void beatWith(Scheduler given) {
        scheduler = given;
        next();
    }

    /** Takes one more on; says whether there is room. */
    boolean add(Supplier<EventStream> begin) {
        synchronized (this) {
            streams.removeIf(EventStream::over);
            if (streams.size() >= MOST) {
                return false;
            }
        }
        EventStream stream = begin.get();
        synchronized (this) {
            streams.add(stream);
        }
        return true;
    }

    void endAll() {
        List<EventStream> all;
        synchronized (this) {
            scheduler = null;
            all = List.copyOf(streams);
            streams.clear();
        }
        all.forEach(EventStream::end);
    }

    private void beat() {
        List<EventStream> all;
        synchronized (this) {
            streams.removeIf(EventStream::over);
            all = List.copyOf(streams);
            next();
        }
        all.forEach(EventStream::beat);
    }

    private void next() {
        if (scheduler != null) {
            scheduler.schedule(this::beat, BEAT);
        }
    }
}
