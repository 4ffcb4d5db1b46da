package org.bookholder.runtime;

import java.util.Optional;
import java.util.function.Consumer;
import org.bookholder.runtime.record.SessionRecorder;
import org.bookholder.runtime.source.Revision;
import org.bookholder.runtime.take.TakeStarter;
import org.bookholder.script.model.Script;
import org.bookholder.session.Renumbering;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeEnd;
import org.bookholder.session.Trouble;

/**
 * Adopts a text that was saved during a session: at the next hold, or at once if no take is rolling. Confined to one
 * thread.
 */
final class TextRevision {
    private final SessionRecorder recorder;
    private final TakeLifecycle takes;
    private final TakeStarter starter;
    private final Consumer<String> keep;
    private Optional<Revision> waiting = Optional.empty();
    private String text;

    /**
     * Creates it.
     *
     * @param text the text that is being read
     * @param keep asks for a text to be saved beside the session; returns at once
     */
    TextRevision(
            SessionRecorder recorder, TakeLifecycle takes, TakeStarter starter, String text, Consumer<String> keep) {
        this.recorder = recorder;
        this.takes = takes;
        this.starter = starter;
        this.text = text;
        this.keep = keep;
    }

    /** Accepts a saved text; it is used from the next hold on, or at once if nobody is reading. */
    void saved(Revision revision) {
        waiting = revision.text().equals(text) ? Optional.empty() : Optional.of(revision);
        forgetTroubles();
        waiting.ifPresent(r -> recorder.amiss(new Trouble(Trouble.Kind.TEXT_WAITS, "")));
        useIfPossible();
    }

    /** Reports that the saved text is not a valid script; the text before stays in use. */
    void unusable(String problem) {
        waiting = Optional.empty();
        forgetTroubles();
        recorder.amiss(new Trouble(Trouble.Kind.TEXT_UNUSABLE, problem));
    }

    /** Reports that the text being read could not be saved beside the session. */
    void notKept(String problem) {
        recorder.amiss(new Trouble(Trouble.Kind.TEXT_NOT_KEPT, problem));
    }

    /**
     * Adopts a waiting text if nobody is reading. A take is always of one text, so in a hold the take is replaced by a
     * new one, held as well. A recording used as input would start from its beginning again, so it is first read to its
     * end.
     */
    void useIfPossible() {
        if (waiting.isEmpty()) {
            return;
        }
        if (!takes.rolling()) {
            use(waiting.get());
        } else if (takes.replaceable()) {
            takes.replace(TakeEnd.TEXT_CHANGED);
        }
    }

    private void use(Revision revision) {
        Script script = revision.script().script();
        Renumbering lines = Renumbering.between(recorder.state().script(), script);
        recorder.enter(SessionEvent.TextChanged.to(takes.now(), script, revision.text()));
        forgetTroubles();
        takes.textChanged(lines);
        starter.use(revision.script());
        text = revision.text();
        waiting = Optional.empty();
        keep.accept(text);
    }

    private void forgetTroubles() {
        recorder.mended(Trouble.Kind.TEXT_WAITS);
        recorder.mended(Trouble.Kind.TEXT_UNUSABLE);
        recorder.mended(Trouble.Kind.TEXT_NOT_KEPT);
    }
}
