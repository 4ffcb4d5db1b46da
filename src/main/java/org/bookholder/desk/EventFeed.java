package org.bookholder.desk;

import java.nio.ByteBuffer;

/**
 * Sends messages to pages, as server-sent events (HTML Living Standard, section 9.2). Safe for use by several threads.
 */
public interface EventFeed {
    /** Receives the messages. */
    @FunctionalInterface
    interface Listener {
        /** Receives a message to pass on, in a read-only buffer of its own. Must not block, and must not call the feed. */
        void send(ByteBuffer message);

        /** There will be no more messages. */
        default void end() {}
    }

    /**
     * Adds a listener.
     *
     * @param lastId the id of the last message that it has received; empty if none
     * @return removes the listener
     */
    Runnable listen(Listener listener, String lastId);

    /** How many listeners there are. */
    int listening();
}
