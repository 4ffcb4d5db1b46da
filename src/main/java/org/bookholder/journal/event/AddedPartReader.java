package org.bookholder.journal.event;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import java.io.IOException;

/**
 * Reads a kind of which a later version stores one part more: everything that earlier versions wrote must be there, what was added may
 * be missing.
 */
final class AddedPartReader<T> extends StdDeserializer<T> {
    private static final long serialVersionUID = 1L;

    private final transient Made<T> made;

    /** Reads values of {@code type}, which {@code made} puts together. */
    AddedPartReader(Class<T> type, Made<T> made) {
        super(type);
        this.made = made;
    }

    @Override
    public T deserialize(JsonParser in, DeserializationContext context) throws IOException {
        return made.of(new Stored(context, context.readTree(in)));
    }

    /** Puts a value together. */
    @FunctionalInterface
    interface Made<T> {
        T of(Stored stored) throws IOException;
    }

    /** A value that is being read. */
    record Stored(DeserializationContext context, JsonNode value) {
        <P> P part(String name, Class<P> type) throws IOException {
            JsonNode part = value.get(name);
            if (part == null || part.isNull()) {
                context.reportInputMismatch(type, "Missing creator property '%s'", name);
            }
            return context.readTreeAsValue(part, type);
        }

        <P> P part(String name, Class<P> type, P ifMissing) throws IOException {
            return value.hasNonNull(name) ? part(name, type) : ifMissing;
        }
    }
}
