package org.bookholder.speech;

import java.util.List;

/** A recogniser that listens to one take. Confined to one thread. */
public interface Ear extends AutoCloseable {
    /** Which of the two kinds of ear this is. */
    EarKind kind();

    /**
     * Takes in the next block.
     *
     * @param block the audio after the previous block; a gap between the two counts as silence
     * @return new hypotheses, in order; usually none, or one partial that differs from the last
     */
    List<Hypothesis> hear(AudioBlock block);

    /** Ends the current utterance as if silence had followed, and returns its remaining hypotheses. */
    List<Hypothesis> finish();

    /** Frees native memory; calling it again does nothing. */
    @Override
    void close();
}
