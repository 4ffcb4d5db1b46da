package org.bookholder.runtime.source;

import java.util.Optional;
import java.util.function.LongSupplier;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioSource;

/** Provides the source of sound for each take. */
public interface Sources {
    /** Opens the microphone, or the file at its beginning. Called for each take, and again if a device was lost. */
    AudioSource open() throws ProblemException;

    /**
     * Opens the device of this name if it is there; empty if it is not, or if there are no devices.
     *
     * @throws ProblemException if it is there and cannot be used
     */
    default Optional<AudioSource> again(String name) throws ProblemException {
        return Optional.empty();
    }

    /** Whether the source runs in real time, so that reading it too late loses sound. */
    boolean live();

    /** Whether there is any sound to hear and record. */
    default boolean sounding() {
        return true;
    }

    /** Silence in real time, for moving the text by hand or at a steady pace without a microphone. */
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
