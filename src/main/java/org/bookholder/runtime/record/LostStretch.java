package org.bookholder.runtime.record;

import java.util.Optional;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;

/** The sound of a take for which there was room neither on disk nor in memory, until it is told. Safe for use by several threads. */
final class LostStretch {
    private @Nullable StreamTime from;
    private StreamTime to = StreamTime.ZERO;

    /** The stretch goes on with what sounded between these times. */
    synchronized void add(StreamTime start, StreamTime end) {
        from = from == null ? start : from;
        to = end;
    }

    /** Where it begins; empty if nothing is lost that was not told. */
    synchronized Optional<StreamTime> since() {
        return Optional.ofNullable(from);
    }

    /** The stretch, once; another one may follow. */
    synchronized Optional<SoundNews> tell() {
        Optional<SoundNews> told = since().map(start -> new SoundNews.NotSaved(start, to));
        from = null;
        return told;
    }
}
