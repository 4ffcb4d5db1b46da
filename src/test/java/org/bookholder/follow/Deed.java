package org.bookholder.follow;

import java.util.List;
import org.bookholder.speech.EarKind;

/** One thing that a follower is told in a random reading. */
sealed interface Deed {
    /** How the times of words lie that an ear reports. */
    enum Times {
        IN_ORDER,
        ALL_THE_SAME,
        BACKWARDS,
        FROM_THE_BEGINNING,
        FAR_AHEAD
    }

    /** What a hand, or the take itself, does. */
    enum Hand {
        MOVE,
        HOLD,
        RESUME,
        NEXT_TAKE
    }

    /**
     * An ear reports an utterance, with its partial hypotheses before it.
     *
     * @param steps fifths of a second from one word to the next: 0 for words of no length
     */
    record Utterance(EarKind ear, List<String> words, Times times, int steps) implements Deed {}

    /** Both ears report an utterance as it was said, so many dB below full scale. */
    record Spoken(List<String> words, int steps, int below) implements Deed {}

    /** An ear reports what it believes and takes it back later. */
    record Believed(EarKind ear, List<String> words) implements Deed {}

    /** So many frames are so many dB below full scale. */
    record Sound(int frames, int below) implements Deed {}

    /** A hand does something; a move goes to a line and a word, which the script may lack. */
    record Done(Hand hand, int line, int word) implements Deed {}
}
