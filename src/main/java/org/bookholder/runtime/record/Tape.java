package org.bookholder.runtime.record;

import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;

/**
 * A take's audio on disk: one stage writes it (capture), one forces it to disk, and one reads it meanwhile (open ear).
 * The three may run at the same time.
 */
public interface Tape {
    /**
     * Adds a block, in session time; a gap before it becomes silence.
     *
     * @throws ProblemException if the disk takes no more; then nothing of the block is on the tape, and it may be added again
     */
    void append(AudioBlock block) throws ProblemException;

    /**
     * Makes what has been added safe against loss of power.
     *
     * @throws ProblemException if that cannot be done, or the tape is no longer in its place; it may be tried again
     */
    void sync() throws ProblemException;

    /** Ends the writing; the audio can still be read. */
    void close() throws ProblemException;

    /**
     * Reads from a sample on.
     *
     * @param first counted from the take's first sample, which is 0
     * @param samples how many at most, 1 or more
     * @return empty if there is nothing there for now
     */
    Optional<AudioBlock> read(long first, int samples) throws ProblemException;

    /** Ends the reading. */
    void closeReader();
}
