package org.bookholder.runtime.take;

import java.util.function.Consumer;
import org.bookholder.runtime.record.RecordedTake;
import org.bookholder.runtime.record.SoundNews;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.UnsavedStretch;
import org.bookholder.sound.Spoil;
import org.bookholder.timing.StreamTime;

/** Reports whether a take's sound is being saved, as it changes. Confined to one thread. */
final class SavingReports {
    private final TakeChannels run;
    private final RecordedTake recording;

    SavingReports(TakeChannels run, RecordedTake recording) {
        this.run = run;
        this.recording = recording;
    }

    /** Tells {@code events} what has changed by {@code at}, and the session what is spoiled by it. */
    void tell(StreamTime at, Consumer<SessionEvent> events) {
        for (SoundNews news : recording.news()) {
            events.accept(event(at, news));
            if (news instanceof SoundNews.NotSaved lost) {
                Spoil spoil = new Spoil(lost.from(), lost.to(), Spoil.Kind.NOT_SAVED);
                run.reports().add(session -> session.takes().spoiled(run.number(), spoil));
            }
        }
    }

    private SessionEvent event(StreamTime at, SoundNews news) {
        if (news instanceof SoundNews.Refused refused) {
            return new SessionEvent.RecordingFailed(at, refused.reason());
        }
        if (news instanceof SoundNews.NotSaved lost) {
            return new SessionEvent.SoundNotSaved(at, new UnsavedStretch(run.number(), lost.from(), lost.to()));
        }
        return new SessionEvent.RecordingResumed(at);
    }
}
