package org.bookholder.journal.event;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.deser.std.StdScalarDeserializer;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.IOException;
import java.util.Map;
import org.bookholder.session.TakeEnd;

/** Reads why a take ended: a name, or the sentence that earlier versions wrote in its place. */
final class TakeEndModule extends SimpleModule {
    private static final long serialVersionUID = 1L;

    /** What is on people's disks; never change one. */
    private static final Map<String, TakeEnd> SENTENCES = Map.of(
            "cut", TakeEnd.CUT,
            "next take", TakeEnd.NEXT_TAKE,
            "the text was changed", TakeEnd.TEXT_CHANGED,
            "the recording is at its end", TakeEnd.SOURCE_ENDED,
            "the capture failed", TakeEnd.CAPTURE_FAILED,
            "the program failed", TakeEnd.PROGRAM_FAILED,
            "broken off", TakeEnd.BROKEN_OFF);

    TakeEndModule() {
        super("take ends");
        addDeserializer(TakeEnd.class, new Reader());
    }

    private static final class Reader extends StdScalarDeserializer<TakeEnd> {
        private static final long serialVersionUID = 1L;

        Reader() {
            super(TakeEnd.class);
        }

        @Override
        public TakeEnd deserialize(JsonParser in, DeserializationContext context) throws IOException {
            String text = _parseString(in, context, this);
            for (TakeEnd end : TakeEnd.values()) {
                if (end.name().equals(text)) {
                    return end;
                }
            }
            return SENTENCES.getOrDefault(text, TakeEnd.OTHER);
        }
    }
}
