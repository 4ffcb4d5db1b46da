package org.bookholder.handoff.edit;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;

/** Creates the objects that every OpenTimelineIO file consists of. */
final class OtioNodes {
    private final FrameRate frames;
    private final double rate;

    OtioNodes(FrameRate rate) {
        frames = rate;
        this.rate = rate.perSecond();
    }

    /** An object of a schema, with a name and room for metadata. */
    ObjectNode object(String schema, String name) {
        ObjectNode node = bare(schema);
        node.putObject("metadata");
        node.put("name", name);
        return node;
    }

    /** An item of a composition; stacks and tracks can have children. */
    ObjectNode item(String schema, String name) {
        ObjectNode node = object(schema, name);
        node.putNull("source_range");
        node.putArray("effects");
        node.putArray("markers");
        node.put("enabled", true);
        if (schema.startsWith("Stack") || schema.startsWith("Track")) {
            node.putArray("children");
        }
        return node;
    }

    /** How many whole frames a length has. */
    long frames(StreamTime length) {
        return frames.frameAt(length.ticks());
    }

    ObjectNode time(long frames) {
        ObjectNode node = bare("RationalTime.1");
        node.put("rate", rate);
        node.put("value", (double) frames);
        return node;
    }

    ObjectNode range(long start, long frames) {
        ObjectNode node = bare("TimeRange.1");
        node.set("duration", time(frames));
        node.set("start_time", time(start));
        return node;
    }

    private static ObjectNode bare(String schema) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("OTIO_SCHEMA", schema);
        return node;
    }
}
