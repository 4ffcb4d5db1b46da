package org.bookholder.app.reading;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.pronounce.Vocabulary;
import org.bookholder.speech.Ears;

/** The recogniser, if there is sound to recognise. */
public record OptionalEars(Optional<Ears> ears) implements AutoCloseable {
    /** Loads the model if {@code wanted}. */
    public static OptionalEars load(Environment here, Path model, boolean wanted) throws ProblemException {
        return new OptionalEars(wanted ? Optional.of(here.equipment().ears(model)) : Optional.empty());
    }

    /** The recogniser's vocabulary; without a recogniser, every word counts as known. */
    public Vocabulary vocabulary() {
        return ears.map(Ears::vocabulary).orElse(word -> true);
    }

    @Override
    public void close() {
        ears.ifPresent(Ears::close);
    }
}
