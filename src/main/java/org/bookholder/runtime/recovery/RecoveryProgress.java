package org.bookholder.runtime.recovery;

import org.bookholder.timing.StreamTime;

/** Who is told how far listening again has got. */
@FunctionalInterface
public interface RecoveryProgress {
    /**
     * So much of a take was heard. May throw to leave off: then nothing of the take is changed.
     *
     * @param take take number, from 1
     * @param heard its sound heard so far
     * @param length all its sound
     */
    void heard(int take, StreamTime heard, StreamTime length);
}
