package org.bookholder.app.script;

import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.SpeechModels;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.pronounce.Vocabulary;
import org.bookholder.speech.Ears;

/**
 * The recogniser's vocabulary. The model is loaded when it is first asked for, which takes about a second, and kept until
 * it is closed. Safe for use by several threads.
 */
public final class KnownWords implements AutoCloseable {
    private final Environment here;
    private Optional<Ears> ears = Optional.empty();
    private boolean missing;
    private boolean allowed = true;

    /** The vocabulary of the model in {@code here}; loads nothing yet. */
    public KnownWords(Environment here) {
        this.here = here;
    }

    /** A use of the vocabulary. */
    @FunctionalInterface
    public interface Use<T> {
        /**
         * Works with the vocabulary; it is not released meanwhile.
         *
         * @param vocabulary empty if there is no recogniser on this machine, or it may not be loaded now
         */
        T with(Optional<Vocabulary> vocabulary) throws ProblemException;
    }

    /** Lets {@code use} work with the vocabulary, one at a time. */
    public synchronized <T> T use(Use<T> use) throws ProblemException {
        if (ears.isEmpty() && !missing && allowed) {
            try {
                ears = Optional.of(here.equipment().ears(here.model()));
            } catch (ProblemException noRecogniser) {
                missing = true;
            }
        }
        return use.with(ears.map(Ears::vocabulary));
    }

    /** What to say if no model hears a script's language; empty if one does. */
    public Optional<String> missing(Script script) throws ProblemException {
        return SpeechModels.known(here, here.model(), script).isPresent()
                ? Optional.empty()
                : Optional.of(SpeechModels.advice(here, script));
    }

    /** Says whether the model may be in memory; where it may not, its memory is given back. */
    public synchronized void allow(boolean wanted) {
        allowed = wanted;
        if (!wanted) {
            close();
        }
    }

    @Override
    public synchronized void close() {
        ears.ifPresent(Ears::close);
        ears = Optional.empty();
        missing = false;
    }
}
