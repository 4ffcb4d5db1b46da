package org.bookholder.speech;

/**
 * Where samples come from: a microphone or a file.
 *
 * <p>Confined to one thread. Times are the source's own and begin at zero. Never waits: who reads decides when to ask
 * again. A gap between one block's end and the next one's start is audio that was lost.
 */
public interface AudioSource extends AutoCloseable {
    /** The device's or file's name, for people. */
    String name();

    /** Samples per second, the same for all blocks. */
    int rate();

    /** Takes what has come since the last call, at most a tenth of a second. */
    AudioRead read();

    /** Lets the device or file go; calling it again does nothing. Never blocks, even if the device is gone. */
    @Override
    void close();
}
