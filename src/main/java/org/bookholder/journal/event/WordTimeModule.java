package org.bookholder.journal.event;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.IOException;
import org.bookholder.follow.model.WordTime;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;

/** Reads and writes when a word was read; how it was said is left out where that does not matter, and earlier versions did not note it. */
final class WordTimeModule extends SimpleModule {
    private static final long serialVersionUID = 1L;

    WordTimeModule() {
        super("word times");
        addDeserializer(WordTime.class, new Reader());
        setMixInAnnotation(WordTime.class, Written.class);
    }

    /** How it is written. */
    @JsonInclude(JsonInclude.Include.NON_EMPTY)
    private interface Written {}

    private static final class Reader extends StdDeserializer<WordTime> {
        private static final long serialVersionUID = 1L;

        /** Asked itself: through the context, its class would be looked into again for each word. */
        private final TimeModule.TicksReader ticks = new TimeModule.TicksReader();

        Reader() {
            super(WordTime.class);
        }

        @Override
        public WordTime deserialize(JsonParser in, DeserializationContext context) throws IOException {
            int word = 0;
            @Nullable StreamTime start = null;
            @Nullable StreamTime end = null;
            String said = "";
            if (!in.isExpectedStartObjectToken()) {
                return (WordTime) context.handleUnexpectedToken(handledType(), in);
            }
            while (in.nextToken() == JsonToken.FIELD_NAME) {
                String name = in.currentName();
                in.nextToken();
                switch (name) {
                    case "word" -> word = _parseIntPrimitive(in, context);
                    case "start" -> start = ticks.deserialize(in, context);
                    case "end" -> end = ticks.deserialize(in, context);
                    case "said" -> said = _parseString(in, context, this);
                    default -> in.skipChildren();
                }
            }
            if (word < 1 || start == null || end == null) {
                return context.reportInputMismatch(this, "a word's number, begin or end is missing");
            }
            return new WordTime(word, start, end, said);
        }
    }
}
