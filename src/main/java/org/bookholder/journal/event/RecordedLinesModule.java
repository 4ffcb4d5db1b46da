package org.bookholder.journal.event;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.IOException;
import java.time.Instant;
import org.bookholder.script.source.RecordedLines;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;

/** Reads scripts' texts with the lines that they were divided into, and those that earlier versions wrote without their lines. */
final class RecordedLinesModule extends SimpleModule {
    private static final long serialVersionUID = 1L;

    RecordedLinesModule() {
        super("recorded lines");
        addDeserializer(SessionEvent.Opened.class, new OpenedReader());
        addDeserializer(SessionEvent.TextChanged.class, new ChangedReader());
    }

    private static <T> T part(DeserializationContext context, JsonNode event, String name, Class<T> type)
            throws IOException {
        JsonNode part = event.get(name);
        if (part == null || part.isNull()) {
            context.reportInputMismatch(type, "Missing creator property '%s'", name);
        }
        return context.readTreeAsValue(part, type);
    }

    private static RecordedLines lines(DeserializationContext context, JsonNode event) throws IOException {
        return event.hasNonNull("lines") ? part(context, event, "lines", RecordedLines.class) : RecordedLines.UNKNOWN;
    }

    private static final class OpenedReader extends StdDeserializer<SessionEvent.Opened> {
        private static final long serialVersionUID = 1L;

        OpenedReader() {
            super(SessionEvent.Opened.class);
        }

        @Override
        public SessionEvent.Opened deserialize(JsonParser in, DeserializationContext context) throws IOException {
            JsonNode event = context.readTree(in);
            return new SessionEvent.Opened(
                    part(context, event, "at", StreamTime.class),
                    part(context, event, "when", Instant.class),
                    part(context, event, "title", String.class),
                    part(context, event, "source", String.class),
                    part(context, event, "scriptText", String.class),
                    lines(context, event));
        }
    }

    private static final class ChangedReader extends StdDeserializer<SessionEvent.TextChanged> {
        private static final long serialVersionUID = 1L;

        ChangedReader() {
            super(SessionEvent.TextChanged.class);
        }

        @Override
        public SessionEvent.TextChanged deserialize(JsonParser in, DeserializationContext context) throws IOException {
            JsonNode event = context.readTree(in);
            return new SessionEvent.TextChanged(
                    part(context, event, "at", StreamTime.class),
                    part(context, event, "scriptText", String.class),
                    lines(context, event));
        }
    }
}
