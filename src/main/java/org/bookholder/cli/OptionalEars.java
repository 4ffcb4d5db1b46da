package org.bookholder.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.pronounce.Vocabulary;
import org.bookholder.speech.Ears;

/** The recogniser, if there is something to hear. */
record OptionalEars(Optional<Ears> ears) implements AutoCloseable {
    /** Loads it if {@code wanted}. */
    static OptionalEars load(Surroundings here, Path model, boolean wanted) throws ProblemException {
        return new OptionalEars(wanted ? Optional.of(here.equipment().ears(model)) : Optional.empty());
    }

    /** Its vocabulary; where nothing is heard, no word is unknown. */
    Vocabulary vocabulary() {
        return ears.map(Ears::vocabulary).orElse(word -> true);
    }

    @Override
    public void close() {
        ears.ifPresent(Ears::close);
    }
}
