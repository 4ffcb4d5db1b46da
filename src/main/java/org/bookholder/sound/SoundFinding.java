package org.bookholder.sound;

/**
 * The verdict on one aspect of the sound.
 *
 * @param grade how good it is
 * @param kind what was found
 */
public record SoundFinding(Grade grade, Kind kind) {
    /** How good something is. */
    public enum Grade {
        /** Leave it as it is. */
        GOOD,
        /** Good enough, but could be better. */
        FAIR,
        /** It spoils a recording. */
        POOR
    }

    /** What was found in the sound. */
    public enum Kind {
        /** No signal at all. */
        NO_SIGNAL,
        /** A signal, but nobody spoke. */
        NO_VOICE,
        /** Speech peaks where it should. */
        LEVEL_RIGHT,
        /** Speech peaks too high. */
        LEVEL_TOO_HIGH,
        /** Speech peaks too low. */
        LEVEL_TOO_LOW,
        /** No sample is cut off at full scale. */
        NO_CLIPPING,
        /** Samples are cut off at full scale. */
        CLIPPING,
        /** How far the voice is above the room. */
        VOICE_TO_ROOM,
        /** How loud the room is. */
        ROOM_NOISE,
        /** How loud the room is, with one noise in it that is louder than the rest. */
        ROOM_DISTURBED,
        /** No hum of the mains. */
        NO_HUM,
        /** Hum of the mains. */
        HUM,
        /** A steady tone that is not of the mains. */
        TONE,
        /** The microphone is not the one that was chosen. */
        OTHER_MICROPHONE,
        /** Two channels that cancel each other. */
        SIDES_OPPOSED,
        /** The voice is on one of two channels only. */
        ONE_SIDE,
        /** The voice lacks its upper part. */
        NARROW,
        /** How long the room goes on after a word. */
        ECHO,
        /** How far the samples lie off zero. */
        OFFSET
    }
}
