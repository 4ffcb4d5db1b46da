package org.bookholder.journal.event;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.SerializerProvider;
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
                new AddedPartReader<>(
                        SessionEvent.Opened.class,
                        event -> new SessionEvent.Opened(
                                event.part("at", StreamTime.class),
                                event.part("when", Instant.class),
                                event.part("title", String.class),
                                event.part("source", String.class),
                                event.part("scriptText", String.class),
                                lines(event))));
        addDeserializer(
                SessionEvent.TextChanged.class,
                new AddedPartReader<>(
                        SessionEvent.TextChanged.class,
                        event -> new SessionEvent.TextChanged(
                                event.part("at", StreamTime.class),
                                event.part("scriptText", String.class),
                                lines(event))));
    }

    private static RecordedLines lines(AddedPartReader.Stored event) throws IOException {
        return event.part("lines", RecordedLines.class, RecordedLines.UNKNOWN);
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
