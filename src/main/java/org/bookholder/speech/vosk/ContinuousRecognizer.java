package org.bookholder.speech.vosk;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;
import org.vosk.Recognizer;

/**
 * Feeds unbroken audio to a recogniser and gives its words their times.
 *
 * <p>A recogniser counts time from its own first sample, in numbers that lose precision as they grow, and its memory
 * grows too. So once it has listened for a while, a fresh recogniser takes over at the end of an utterance. The fresh
 * one is given the last moments again, which the old one had received but not yet processed: silence, or the beginning
 * of the next word.
 */
final class ContinuousRecognizer implements AutoCloseable {
    private static final double HEARD_AGAIN_SECONDS = 0.35;

    private final Supplier<Recognizer> recognizers;
    private final int rate;
    private final StreamTime start;
    private final long renewAfter;
    private final short[] tail;
    private Recognizer recognizer;
    private long fed;
    private long base;

    /**
     * Starts listening.
     *
     * @param recognizers creates recognisers
     * @param rate samples per second
     * @param start time of the first sample
     * @param renewAfter samples after which a fresh recogniser takes over
     */
    ContinuousRecognizer(Supplier<Recognizer> recognizers, int rate, StreamTime start, long renewAfter) {
        this.recognizers = recognizers;
        this.rate = rate;
        this.start = start;
        this.renewAfter = renewAfter;
        this.tail = new short[(int) (HEARD_AGAIN_SECONDS * rate)];
        this.recognizer = recognizers.get();
    }

    /** Takes in samples; returns an utterance if one ended, which may have no words. */
    Optional<List<RecognizedWord>> hear(short[] samples) {
        boolean ended = recognizer.acceptWaveForm(samples, samples.length);
        fed += samples.length;
        remember(samples);
        if (!ended) {
            return Optional.empty();
        }
        return Optional.of(end());
    }

    /**
     * Ends the utterance here. Call it in a pause long enough for the last word to have been processed: the recogniser
     * is up to {@value #HEARD_AGAIN_SECONDS} s behind its input, and continues from there.
     */
    List<RecognizedWord> end() {
        List<RecognizedWord> words = VoskJson.result(recognizer.getResult(), baseTime());
        if (fed - base > renewAfter) {
            renew();
        }
        return words;
    }

    /** The same in a shorter pause: all input so far is processed, and the recogniser starts afresh. */
    List<RecognizedWord> flush() {
        return VoskJson.result(recognizer.getFinalResult(), baseTime());
    }

    /** The words of the utterance so far. */
    List<String> partial() {
        return VoskJson.partial(recognizer.getPartialResult());
    }

    /** Ends the current utterance here and returns its words; do not call {@code hear} afterwards. */
    List<RecognizedWord> finish() {
        return VoskJson.result(recognizer.getFinalResult(), baseTime());
    }

    private StreamTime baseTime() {
        return start.plus(StreamTime.ofSamples(base, rate));
    }

    private void remember(short[] samples) {
        int kept = Math.max(0, tail.length - samples.length);
        System.arraycopy(tail, tail.length - kept, tail, 0, kept);
        int added = tail.length - kept;
        System.arraycopy(samples, samples.length - added, tail, kept, added);
    }

    private void renew() {
        recognizer.close();
        recognizer = recognizers.get();
        int again = (int) Math.min(tail.length, fed);
        base = fed - again;
        short[] last = Arrays.copyOfRange(tail, tail.length - again, tail.length);
        recognizer.acceptWaveForm(last, last.length);
    }

    @Override
    public void close() {
        recognizer.close();
    }
}
