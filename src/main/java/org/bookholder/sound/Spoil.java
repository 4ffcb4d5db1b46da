package org.bookholder.sound;

import org.bookholder.timing.StreamTime;

/**
 * A part of a take whose sound is unusable.
 *
 * @param start where it begins in the session's audio
 * @param end where it ends
 * @param kind what spoiled it
 */
public record Spoil(StreamTime start, StreamTime end, Kind kind) {
    /** What can spoil sound. */
    public enum Kind {
        /** Clipped at full scale. */
        CLIPPED,
        /** The voice is hardly louder than the room. */
        NOISY,
        /** A piece is missing. */
        DROPOUT,
        /** It could not be saved. */
        NOT_SAVED
    }

    /** How much of it lies between two times. */
    public StreamTime within(StreamTime from, StreamTime to) {
        return StreamTime.min(end, to).since(StreamTime.max(start, from));
    }
}
