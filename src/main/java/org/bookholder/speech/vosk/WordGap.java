package org.bookholder.speech.vosk;

import java.util.List;
import java.util.Optional;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/**
 * A gap between two words of an utterance, where it can be divided.
 *
 * @param wordsBefore how many words of the utterance lie before it, at least one
 * @param middle its middle
 */
record WordGap(int wordsBefore, StreamTime middle) {
    /** The last words before the end of what was heard are not certain yet. */
    private static final StreamTime UNCERTAIN = StreamTime.ofSeconds(0.5);

    /** In a gap this wide a voice has paused: the words beside it are heard as well alone as together. */
    private static final StreamTime WIDE = StreamTime.ofSeconds(0.12);

    /**
     * The last wide gap; if there is none, the widest, which has no width at all if the words touch.
     *
     * @param words the words of an utterance, in order of time
     * @param from where the gap may lie at the earliest
     * @param to how far the audio was heard
     */
    static Optional<WordGap> best(List<RecognizedWord> words, StreamTime from, StreamTime to) {
        StreamTime latest = to.since(UNCERTAIN);
        Optional<WordGap> best = Optional.empty();
        StreamTime widest = StreamTime.ZERO;
        for (int i = 1; i < words.size(); i++) {
            StreamTime before = words.get(i - 1).end();
            StreamTime gap = words.get(i).start().since(before);
            StreamTime middle = before.plus(new StreamTime(gap.ticks() / 2));
            StreamTime width = StreamTime.min(gap, WIDE);
            if (!middle.isBefore(from) && !latest.isBefore(middle) && !width.isBefore(widest)) {
                best = Optional.of(new WordGap(i, middle));
                widest = width;
            }
        }
        return best;
    }
}
