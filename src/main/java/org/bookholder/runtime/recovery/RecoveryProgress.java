package org.bookholder.runtime.recovery;

import org.bookholder.timing.StreamTime;

/** Receives the progress of following takes again. */
@FunctionalInterface
public interface RecoveryProgress {
    /**
     * Reports progress in a take. May throw to stop the work; then the take is not changed.
     *
     * @param take take number, from 1
     * @param heard length of its sound processed so far
     * @param length length of all its sound
     */
    void heard(int take, StreamTime heard, StreamTime length);
}
