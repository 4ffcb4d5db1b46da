package org.bookholder.journal.event;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.std.StdScalarDeserializer;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdScalarSerializer;
import com.fasterxml.jackson.databind.ser.std.ToStringSerializer;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import org.bookholder.timing.StreamTime;

/** Writes and reads times in JSON: stream time as its count of ticks, an instant or a duration as ISO 8601 text. */
public final class TimeModule extends SimpleModule {
    private static final long serialVersionUID = 1L;

    public TimeModule() {
        super("times");
        addSerializer(StreamTime.class, new TicksWriter());
        addDeserializer(StreamTime.class, new TicksReader());
        addSerializer(Instant.class, ToStringSerializer.instance);
        addDeserializer(Instant.class, new InstantReader());
        addSerializer(Duration.class, ToStringSerializer.instance);
        addDeserializer(Duration.class, new DurationReader());
    }

    private static final class TicksWriter extends StdScalarSerializer<StreamTime> {
        private static final long serialVersionUID = 1L;

        TicksWriter() {
            super(StreamTime.class);
        }

        @Override
        public void serialize(StreamTime value, JsonGenerator out, SerializerProvider provider) throws IOException {
            out.writeNumber(value.ticks());
        }
    }

    /** Reads a time that is not negative. */
    static final class TicksReader extends StdScalarDeserializer<StreamTime> {
        private static final long serialVersionUID = 1L;

        TicksReader() {
            super(StreamTime.class);
        }

        @Override
        public StreamTime deserialize(JsonParser in, DeserializationContext context) throws IOException {
            long ticks = _parseLongPrimitive(in, context);
            if (ticks < 0) {
                return (StreamTime) context.handleWeirdNumberValue(handledType(), ticks, "a time is never negative");
            }
            return new StreamTime(ticks);
        }
    }

    private static final class InstantReader extends StdScalarDeserializer<Instant> {
        private static final long serialVersionUID = 1L;

        InstantReader() {
            super(Instant.class);
        }

        @Override
        public Instant deserialize(JsonParser in, DeserializationContext context) throws IOException {
            String text = _parseString(in, context, this);
            try {
                return Instant.parse(text);
            } catch (DateTimeParseException e) {
                return (Instant) context.handleWeirdStringValue(handledType(), text, "not an ISO 8601 instant");
            }
        }
    }

    private static final class DurationReader extends StdScalarDeserializer<Duration> {
        private static final long serialVersionUID = 1L;

        DurationReader() {
            super(Duration.class);
        }

        @Override
        public Duration deserialize(JsonParser in, DeserializationContext context) throws IOException {
            String text = _parseString(in, context, this);
            try {
                return Duration.parse(text);
            } catch (DateTimeParseException e) {
                return (Duration) context.handleWeirdStringValue(handledType(), text, "not an ISO 8601 duration");
            }
        }
    }
}
