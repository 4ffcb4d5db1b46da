package org.bookholder.runtime.recovery;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.session.SessionEvent;
import org.bookholder.sound.Spoil;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;

/** The stretches of a take in which no sound came in or was saved, according to its journal; its recording is silent there. */
final class LostSound {
    private static final StreamTime END = new StreamTime(Long.MAX_VALUE / 2);

    private LostSound() {}

    static List<Spoil> of(UnsettledTake take) {
        List<Spoil> lost = new ArrayList<>();
        @Nullable StreamTime since = null;
        for (SessionEvent event : take.events()) {
            if (event instanceof SessionEvent.SamplesLost gap) {
                lost.add(dropout(gap.at().since(gap.length()), gap.at()));
            } else if (event instanceof SessionEvent.SoundNotSaved unsaved
                    && unsaved.stretch().take() == take.number()) {
                lost.add(new Spoil(unsaved.stretch().start(), unsaved.stretch().end(), Spoil.Kind.NOT_SAVED));
            } else if (event instanceof SessionEvent.SourceLost) {
                since = since == null ? event.at() : since;
            } else if (event instanceof SessionEvent.SourceFound && since != null) {
                lost.add(dropout(since, event.at()));
                since = null;
            }
        }
        if (since != null) {
            lost.add(dropout(since, END));
        }
        return lost;
    }

    private static Spoil dropout(StreamTime from, StreamTime to) {
        return new Spoil(from, to, Spoil.Kind.DROPOUT);
    }
}
