package org.bookholder.session;

/** Who or what moved the reading position. */
public enum Mover {
    /** The voice, through following. */
    VOICE,
    /** The steady glide at the target pace. */
    STEADY,
    /** A key, clicker, pedal or wheel. */
    HAND
}
