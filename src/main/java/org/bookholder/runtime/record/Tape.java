package org.bookholder.runtime.record;

import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;

/**
 * A take's audio on disk: one stage writes it (capture), one forces it to disk, and one reads it meanwhile (open ear).
 * Each method is used by one stage only; the three stages may run at the same time.
 */
public interface Tape {
    /** Adds a block, in session time; a gap before it becomes silence. */
    void append(AudioBlock block) throws ProblemException;

    /** Forces what has been added to disk. */
    void sync() throws ProblemException;

    /** Ends the writing; the audio can still be read. */
    void close() throws ProblemException;

    /** Reads the next audio, at most {@code samples} samples, in session time; empty if there is no more for now. */
    Optional<AudioBlock> read(int samples) throws ProblemException;

    /** Ends the reading. */
    void closeReader();
}
