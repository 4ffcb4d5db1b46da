package org.bookholder.speech;

import org.bookholder.script.pronounce.Vocabulary;

/** A loaded language model, from which ears are made. Safe for use by several threads; ears are not. */
public interface Ears extends AutoCloseable {
    /** The model's vocabulary. */
    Vocabulary vocabulary();

    /** An ear that expects the phrases of {@code grammar}, for audio at {@code rate} samples per second. */
    Ear scriptEar(Grammar grammar, int rate);

    /** An ear without expectation, for audio at {@code rate} samples per second. */
    Ear openEar(int rate);

    @Override
    void close();
}
