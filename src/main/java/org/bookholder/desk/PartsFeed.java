package org.bookholder.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Sends named parts of something as JSON: all of them to a page that joins ({@code whole}), and afterwards each part that has
 * changed ({@code change}). A page that comes back is sent all of them again.
 */
public final class PartsFeed implements EventFeed {
    private final List<Listener> listeners = new ArrayList<>();
    private Map<String, JsonNode> parts = Map.of();

    /** Sends what differs from the last time to everyone; says whether anything was sent. */
    public synchronized boolean tell(Map<String, JsonNode> now) {
        ObjectNode change = JsonNodeFactory.instance.objectNode();
        now.forEach((name, part) -> {
            if (!part.equals(parts.get(name))) {
                change.set(name, part);
            }
        });
        if (change.isEmpty()) {
            return false;
        }
        parts = new LinkedHashMap<>(now);
        ByteBuffer message = event("change", change);
        List.copyOf(listeners).forEach(listener -> listener.send(message.duplicate()));
        return true;
    }

    @Override
    public synchronized Runnable listen(Listener listener, String lastId) {
        ObjectNode whole = JsonNodeFactory.instance.objectNode();
        parts.forEach(whole::set);
        listener.send(event("whole", whole));
        listeners.add(listener);
        return () -> forget(listener);
    }

    @Override
    public synchronized int listening() {
        return listeners.size();
    }

    private synchronized void forget(Listener listener) {
        listeners.remove(listener);
    }

    private static ByteBuffer event(String name, ObjectNode data) {
        // JSON text holds no line break, so one data field is enough.
        String text = "event: " + name + "\ndata: " + data + "\n\n";
        return StandardCharsets.UTF_8.encode(text).asReadOnlyBuffer();
    }
}
