package org.bookholder.cutlist;

import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.StreamTime;

/** The recordings of a session's takes. */
@FunctionalInterface
public interface TakeSound {
    /** No recordings: cuts are placed by the recognised times alone. */
    TakeSound NONE = (take, from, to) -> Optional.empty();

    /**
     * A piece of a take.
     *
     * @param take take number, from 1
     * @param from session time of the first sample
     * @param to session time after the last one
     * @return the part that exists, with its own time; empty if it was not recorded
     * @throws ProblemException if the recording is there and cannot be read
     */
    Optional<AudioBlock> read(int take, StreamTime from, StreamTime to) throws ProblemException;
}
