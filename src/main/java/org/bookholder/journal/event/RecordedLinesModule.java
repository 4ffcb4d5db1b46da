package org.bookholder.journal.event;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.time.Instant;
import org.bookholder.script.source.RecordedLines;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;

/**
 * Stores scripts' texts with the lines that they were divided into, where these are known, and reads those that earlier versions wrote
 * without their lines.
 */
final class RecordedLinesModule extends SimpleModule {
    private static final long serialVersionUID = 1L;

    /** Lines that are not known are not written, as versions before did not. */
    static final JsonInclude.Value IF_KNOWN =
            JsonInclude.Value.construct(JsonInclude.Include.NON_EMPTY, JsonInclude.Include.ALWAYS);

    RecordedLinesModule() {
        super("recorded lines");
        addSerializer(RecordedLines.class, new LinesWriter());
        addDeserializer(
                SessionEvent.Opened.class,
                new Reader<>(
                        SessionEvent.Opened.class,
                        event -> new SessionEvent.Opened(
                                event.part("at", StreamTime.class),
                                event.part("when", Instant.class),
                                event.part("title", String.class),
                                event.part("source", String.class),
                                event.part("scriptText", String.class),
                                event.lines())));
        addDeserializer(
                SessionEvent.TextChanged.class,
                new Reader<>(
                        SessionEvent.TextChanged.class,
                        event -> new SessionEvent.TextChanged(
                                event.part("at", StreamTime.class),
                                event.part("scriptText", String.class),
                                event.lines())));
    }

    /** An event that is being read. */
    private record Stored(DeserializationContext context, JsonNode event) {
        <T> T part(String name, Class<T> type) throws IOException {
            JsonNode part = event.get(name);
            if (part == null || part.isNull()) {
                context.reportInputMismatch(type, "Missing creator property '%s'", name);
            }
            return context.readTreeAsValue(part, type);
        }

        RecordedLines lines() throws IOException {
            return event.hasNonNull("lines") ? part("lines", RecordedLines.class) : RecordedLines.UNKNOWN;
        }
    }

    /** Puts an event together. */
    @FunctionalInterface
    private interface Made<T> {
        T of(Stored event) throws IOException;
    }

    private static final class Reader<T> extends StdDeserializer<T> {
        private static final long serialVersionUID = 1L;

        private final transient Made<T> made;

        Reader(Class<T> type, Made<T> made) {
            super(type);
            this.made = made;
        }

        @Override
        public T deserialize(JsonParser in, DeserializationContext context) throws IOException {
            return made.of(new Stored(context, context.readTree(in)));
        }
    }

    private static final class LinesWriter extends StdSerializer<RecordedLines> {
        private static final long serialVersionUID = 1L;

        LinesWriter() {
            super(RecordedLines.class);
        }

        @Override
        public boolean isEmpty(SerializerProvider provider, RecordedLines lines) {
            return lines.words().isEmpty();
        }

        @Override
        public void serialize(RecordedLines lines, JsonGenerator out, SerializerProvider provider) throws IOException {
            out.writeStartObject();
            provider.defaultSerializeField("words", lines.words(), out);
            out.writeEndObject();
        }
    }
}
