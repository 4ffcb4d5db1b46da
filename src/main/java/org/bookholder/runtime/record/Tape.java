package org.bookholder.runtime.record;

import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;

/**
 * A take's audio on disk: written by the capture stage, made safe by another, read along by the open ear. Each method is
 * used by one stage only, and the three may do so at once.
 */
public interface Tape {
    /** Adds a block, in session time; a gap before it becomes silence. */
    void append(AudioBlock block) throws ProblemException;

    /** Makes what has been added safe against loss of power. */
    void sync() throws ProblemException;

    /** Ends the writing; what is there can still be read. */
    void close() throws ProblemException;

    /** Reads on, at most {@code samples} samples in session time; empty if there is nothing more for now. */
    Optional<AudioBlock> read(int samples) throws ProblemException;

    /** Ends the reading. */
    void closeReader();
}
