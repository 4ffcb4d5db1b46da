package org.bookholder.runtime.source;

import java.util.function.LongSupplier;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioSource;

/** Where each take's sound comes from. */
public interface Sources {
    /** Opens the microphone, or the file from its beginning. Called for each take and, if a device was lost, again. */
    AudioSource open() throws ProblemException;

    /** Whether time goes on by itself, so that who reads late loses sound. */
    boolean live();

    /** Whether there is sound at all, to be heard and kept. */
    default boolean sounding() {
        return true;
    }

    /** No sound, in real time: for reading by hand or at a steady pace without a microphone. */
    static Sources silent(LongSupplier nanoTime) {
        return new Sources() {
            @Override
            public AudioSource open() {
                return new SilentSource(SilentSource.RATE, nanoTime);
            }

            @Override
            public boolean live() {
                return true;
            }

            @Override
            public boolean sounding() {
                return false;
            }
        };
    }
}
