package org.bookholder.handoff;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;

/**
 * Exports the changes of the reading position, one JSON object per line: {@code at} is how many seconds of the
 * session's audio had been processed at the change, {@code line} and {@code word} are the numbers, from 1, of the word
 * to be read next.
 */
public final class TraceExporter implements Exporter {
    @Override
    public String name() {
        return "trace";
    }

    @Override
    public String description() {
        return "each change of the reading position, as JSON lines, for measuring";
    }

    @Override
    public void write(SessionState state, List<SessionEvent> events, Appendable out) throws IOException {
        for (SessionEvent event : events) {
            if (event instanceof SessionEvent.PositionMoved moved) {
                ReadingPosition position = moved.position();
                out.append(String.format(
                        Locale.ROOT,
                        "{\"at\":%.3f,\"line\":%d,\"word\":%d}\n",
                        moved.at().seconds(),
                        position.line(),
                        position.word()));
            }
        }
    }
}
