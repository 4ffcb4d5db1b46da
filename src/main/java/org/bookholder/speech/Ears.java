package org.bookholder.speech;

import org.bookholder.script.pronounce.Vocabulary;

/** A loaded language model that creates ears. Thread-safe; the ears themselves are not. */
public interface Ears extends AutoCloseable {
    /** The model's vocabulary. */
    Vocabulary vocabulary();

    /** Creates an ear that expects the phrases of {@code grammar}, for audio at {@code rate} samples per second. */
    Ear scriptEar(Grammar grammar, int rate);

    /** Creates an ear that expects nothing in particular, for audio at {@code rate} samples per second. */
    Ear openEar(int rate);

    @Override
    void close();
}
