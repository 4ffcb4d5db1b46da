package org.bookholder.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;

/**
 * Sends the state of a session to pages, as server-sent events (HTML Living Standard, section 9.2): first a snapshot of the
 * whole, then each change. Messages are numbered without a gap. A page that reconnects is sent exactly what it missed, or a
 * snapshot if that is no longer kept; a page that sees a gap asks for a snapshot.
 *
 * <p>A message is made once for all pages, by whoever calls {@link #look}; listeners only pass it on and must not wait.
 * Safe for use by several threads.
 */
public final class Feed implements EventFeed {
    /** Messages kept for pages that come back: some 20 s of a lively take. */
    private static final int KEPT = 256;

    private static final int KEPT_BYTES = 1 << 20;

    /** A page that joins may be sent a snapshot that is this many messages old, and then those messages. */
    private static final int STALE = 64;

    /** If only the time has changed, pages get a message once per this many seconds of audio. */
    private static final double TICK = 0.25;

    private final DeskSession session;
    private final String run;
    private final ZoneId zone;
    private final List<Listener> listeners = new ArrayList<>();
    private final Deque<Message> kept = new ArrayDeque<>();
    private int keptBytes;
    private LiveHistory trail;
    private SessionState told;
    private HandOffStatus handedOff;
    private Map<String, JsonNode> parts;
    private long number;

    /** Guards the snapshot that joining pages share, so that {@link #look} need not wait for it. Taken before the feed's own lock. */
    private final Object joining = new Object();

    private Optional<Message> lastWhole = Optional.empty();

    /**
     * A message as it is sent.
     *
     * @param number from 1, without a gap
     * @param text the event with its id
     */
    private record Message(long number, ByteBuffer text) {}

    /**
     * A feed without listeners.
     *
     * @param trail the history of the session so far
     * @param run names this run of the program, so that ids of an earlier run are recognised
     * @param zone the program's time zone, in which pages show times of day
     */
    public Feed(DeskSession session, LiveHistory trail, String run, ZoneId zone) {
        this.session = session;
        this.zone = zone;
        this.run = run;
        told = session.state();
        handedOff = session.handOff().now();
        this.trail = trail.after(told);
        parts = StateJson.parts(told, this.trail, handedOff);
    }

    /** Looks at the session and sends what has changed to everyone; returns whether anything was sent. */
    public synchronized boolean look() {
        SessionState state = session.state();
        HandOffStatus files = session.handOff().now();
        boolean same = state.revision() == told.revision()
                && state.troubles().equals(told.troubles())
                && state.upNext().equals(told.upNext());
        if (same && files.equals(handedOff)) {
            return false;
        }
        LiveHistory before = trail;
        trail = trail.after(state);
        boolean otherScript = !state.script().equals(told.script());
        Map<String, JsonNode> now = StateJson.parts(state, trail, files);
        ObjectNode change = JsonNodeFactory.instance.objectNode();
        now.forEach((name, part) -> {
            if (!part.equals(parts.get(name))) {
                change.set(name, part);
            }
        });
        ArrayNode lines = otherScript ? StateJson.lines(state) : changedLines(state);
        if (!lines.isEmpty()) {
            change.set("lines", lines);
            change.set("summary", SummaryJson.of(state));
        }
        if (otherScript) {
            change.set("script", StateJson.script(state.script()));
        }
        if (trail.pace().size() > before.pace().size()) {
            change.set("points", StateJson.points(trail.pace(), before.pace().size()));
        }
        told = state;
        handedOff = files;
        if (change.isEmpty() || isMereTick(change)) {
            // Nothing was sent, so later states are still compared with the last one that was.
            return false;
        }
        parts = now;
        send(change);
        return true;
    }

    /** Whether nothing has changed except that a little time has passed. */
    private boolean isMereTick(ObjectNode change) {
        if (change.size() > 1
                || !(change.get("at") instanceof ObjectNode at)
                || !(parts.get("at") instanceof ObjectNode had)) {
            return false;
        }
        double passed = at.path("now").asDouble() - had.path("now").asDouble();
        return passed < TICK && at.deepCopy().set("now", had.get("now")).equals(had);
    }

    @Override
    public Runnable listen(Listener listener, String lastId) {
        Optional<Long> had = numberOf(lastId);
        while (had.isEmpty() || !listenFrom(had.get(), Optional.empty(), listener)) {
            Message whole = whole();
            if (listenFrom(whole.number(), Optional.of(whole), listener)) {
                break;
            }
        }
        return () -> forget(listener);
    }

    /** Sends the messages after number {@code had} and adds the listener; false if they are no longer kept. */
    private synchronized boolean listenFrom(long had, Optional<Message> first, Listener listener) {
        if (had > number || had < oldest() - 1) {
            return false;
        }
        first.ifPresent(m -> listener.send(m.text().duplicate()));
        kept.stream()
                .filter(m -> m.number() > had)
                .forEach(m -> listener.send(m.text().duplicate()));
        listeners.add(listener);
        return true;
    }

    @Override
    public synchronized int listening() {
        return listeners.size();
    }

    /** Tells all listeners that there will be no more messages: their pages come back and are shown what is there then. */
    public void end() {
        List<Listener> all;
        synchronized (this) {
            all = List.copyOf(listeners);
        }
        all.forEach(Listener::end);
    }

    private synchronized void forget(Listener listener) {
        listeners.remove(listener);
    }

    private ArrayNode changedLines(SessionState state) {
        ArrayNode lines = JsonNodeFactory.instance.arrayNode();
        int i = 0;
        for (LineNotes line : state.lines().all()) {
            if (!line.equals(told.lines().all().get(i++))) {
                lines.add(LineJson.of(state, line));
            }
        }
        return lines;
    }

    private void send(ObjectNode change) {
        number++;
        Message message = new Message(number, event("change", number, change));
        kept.add(message);
        keptBytes += message.text().remaining();
        while (kept.size() > KEPT || keptBytes > KEPT_BYTES) {
            keptBytes -= kept.remove().text().remaining();
        }
        List.copyOf(listeners).forEach(l -> l.send(message.text().duplicate()));
    }

    /** The number in an id; empty if the id is not from this run. */
    private Optional<Long> numberOf(String id) {
        String prefix = run + ".";
        boolean ours = id.startsWith(prefix) && id.substring(prefix.length()).matches("\\d{1,18}");
        return ours ? Optional.of(Long.parseLong(id.substring(prefix.length()))) : Optional.empty();
    }

    private synchronized long oldest() {
        return kept.isEmpty() ? number + 1 : kept.element().number();
    }

    /** Snapshot of the complete state, sent to a page that joins; made once for many of them. */
    private Message whole() {
        synchronized (joining) {
            Supplier<Message> fresh;
            synchronized (this) {
                long least = Math.max(oldest() - 1, number - STALE);
                if (lastWhole.filter(m -> m.number() >= least).isPresent()) {
                    return lastWhole.get();
                }
                fresh = wholeOf(number, told, trail, parts);
            }
            Message made = fresh.get();
            lastWhole = Optional.of(made);
            return made;
        }
    }

    /** All arguments are immutable, so no lock is held while the snapshot is made. */
    private Supplier<Message> wholeOf(long at, SessionState state, LiveHistory then, Map<String, JsonNode> known) {
        return () -> {
            ObjectNode whole = JsonNodeFactory.instance.objectNode();
            whole.put("session", session.name());
            whole.put("live", session.live());
            whole.put("zone", zone.getId());
            whole.set("cautions", StateJson.cautions());
            whole.set("script", StateJson.script(state.script()));
            known.forEach(whole::set);
            whole.set("lines", StateJson.lines(state));
            whole.set("summary", SummaryJson.of(state));
            whole.set("points", StateJson.points(then.pace(), 0));
            return new Message(at, event("whole", at, whole));
        };
    }

    private ByteBuffer event(String name, long id, ObjectNode data) {
        // JSON text holds no line break, so one data field is enough.
        String text = "event: " + name + "\nid: " + run + "." + id + "\ndata: " + data + "\n\n";
        return StandardCharsets.UTF_8.encode(text).asReadOnlyBuffer();
    }
}
