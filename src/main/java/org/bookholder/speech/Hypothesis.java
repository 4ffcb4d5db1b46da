package org.bookholder.speech;

import java.util.List;
import org.bookholder.timing.StreamTime;

/** Words that a recogniser reports. */
public sealed interface Hypothesis {
    /** Which ear. */
    EarKind ear();

    /** How much of the session's audio the ear had processed when it reported this. */
    StreamTime heardTo();

    /**
     * The utterance so far; each one replaces the one before, until a {@link Final}.
     *
     * @param ear which ear
     * @param heardTo audio processed
     * @param words the words so far without times, never empty
     */
    record Partial(EarKind ear, StreamTime heardTo, List<String> words) implements Hypothesis {
        /** Copies the list. */
        public Partial {
            words = List.copyOf(words);
        }
    }

    /**
     * A finished utterance; it is not revised, and the next partial begins a new one.
     *
     * @param ear which ear
     * @param heardTo audio processed
     * @param words the words with their times, in order; empty if there were none
     * @param end where in the audio the utterance ends, at most {@code heardTo}; earlier if speech went on without a
     *     pause and was divided between two words
     * @param next the words of the next utterance so far; empty unless {@code end} lies before {@code heardTo}
     */
    record Final(EarKind ear, StreamTime heardTo, List<RecognizedWord> words, StreamTime end, List<String> next)
            implements Hypothesis {
        /** Copies the lists and checks the end. */
        public Final {
            words = List.copyOf(words);
            next = List.copyOf(next);
            if (heardTo.isBefore(end)) {
                throw new IllegalArgumentException(
                        "end (" + end + ") must not lie after what was heard (" + heardTo + ")");
            }
        }

        /** An utterance that ends where the audio processed ends. */
        public Final(EarKind ear, StreamTime heardTo, List<RecognizedWord> words) {
            this(ear, heardTo, words, heardTo, List.of());
        }
    }
}
