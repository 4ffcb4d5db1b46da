package org.bookholder.speech;

/**
 * A source of audio samples: a microphone or a file.
 *
 * <p>Confined to one thread. Times are relative to the source and begin at zero. Reading never waits: the caller
 * decides when to ask again. A gap between the end of one block and the start of the next means that audio was lost.
 */
public interface AudioSource extends AutoCloseable {
    /** Name of the device or file, as shown to the user. */
    String name();

    /** Samples per second, the same for all blocks. */
    int rate();

    /** Returns the audio that has arrived since the last call, at most a tenth of a second. */
    AudioRead read();

    /** Releases the device or file; calling it again does nothing. Never blocks, even if the device is gone. */
    @Override
    void close();
}
