package org.bookholder.speech;

import java.util.List;

/** A recogniser that listens to one take. Confined to one thread. */
public interface Ear extends AutoCloseable {
    /** Which of the two this is. */
    EarKind kind();

    /**
     * Listens on.
     *
     * @param block audio that follows the block before it; where it does not, the gap counts as silence
     * @return what is newly believed, in order; usually empty or one partial that differs from the last
     */
    List<Hypothesis> hear(AudioBlock block);

    /** Ends the utterance as if silence had followed, and returns what was still open. */
    List<Hypothesis> finish();

    /** Frees native memory; calling it again does nothing. */
    @Override
    void close();
}
