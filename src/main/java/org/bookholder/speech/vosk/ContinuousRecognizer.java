package org.bookholder.speech.vosk;

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
 *
 * <p>In speech without pauses, an utterance can be divided between two words; the recogniser is then given what follows
 * a second time.
 */
final class ContinuousRecognizer implements AutoCloseable {
    private static final double HEARD_AGAIN_SECONDS = 0.35;

    /** How far back an utterance may be divided; the time to hear this much again is the price. */
    private static final double DIVIDED_SECONDS = 5;

    private final Supplier<Recognizer> recognizers;
    private final int rate;
    private final StreamTime start;
    private final long renewAfter;
    private final RecentSound sound;
    private Recognizer recognizer;
    private long base;
    private long added;

    /**
     * An utterance that was divided.
     *
     * @param words the words of its first part
     * @param end where that part ends
     * @param rest the words of the rest, if an utterance ended there too; otherwise the rest goes on
     */
    record Divided(List<RecognizedWord> words, StreamTime end, Optional<List<RecognizedWord>> rest) {}

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
        this.sound = new RecentSound((int) (DIVIDED_SECONDS * rate));
        this.recognizer = recognizers.get();
    }

    /** Takes in samples; returns an utterance if one ended, which may have no words. */
    Optional<List<RecognizedWord>> hear(short[] samples) {
        boolean ended = recognizer.acceptWaveForm(samples, samples.length);
        sound.add(samples);
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
        List<RecognizedWord> words = result(recognizer.getResult());
        if (sound.count() - base > renewAfter) {
            short[] last = sound.takeBack(earlier(HEARD_AGAIN_SECONDS));
            renew();
            recognizer.acceptWaveForm(last, last.length);
            sound.add(last);
        }
        return words;
    }

    /** The same in a shorter pause: all input so far is processed, and the recogniser starts afresh. */
    List<RecognizedWord> flush() {
        return result(recognizer.getFinalResult());
    }

    /**
     * Divides the utterance in a gap between its last words, and hears the rest again from there. Without a gap it ends
     * here. The recogniser keeps what it has learnt of the voice: silence makes it process all input so far.
     */
    Divided divide() {
        short[] silence = new short[(int) (HEARD_AGAIN_SECONDS * rate)];
        recognizer.acceptWaveForm(silence, silence.length);
        List<RecognizedWord> words = result(recognizer.getResult());
        added += silence.length;
        StreamTime now = time(sound.count());
        long earliest = earlier(DIVIDED_SECONDS);
        return WordGap.best(words, time(earliest), now)
                .map(gap -> {
                    long first = Math.max(earliest, gap.middle().since(start).samples(rate));
                    return new Divided(words.subList(0, gap.wordsBefore()), time(first), hearAgain(first));
                })
                .orElseGet(() -> new Divided(words, now, Optional.empty()));
    }

    private Optional<List<RecognizedWord>> hearAgain(long first) {
        short[] rest = sound.takeBack(first);
        added += rest.length;
        if (first - base > renewAfter) {
            renew();
        }
        return hear(rest);
    }

    /** The words of the utterance so far. */
    List<String> partial() {
        return VoskJson.partial(recognizer.getPartialResult());
    }

    /** Ends the current utterance here and returns its words; do not call {@code hear} afterwards. */
    List<RecognizedWord> finish() {
        return result(recognizer.getFinalResult());
    }

    private List<RecognizedWord> result(String json) {
        return VoskJson.result(json, time(base), (double) added / rate);
    }

    private StreamTime time(long samples) {
        return start.plus(StreamTime.ofSamples(samples, rate));
    }

    private long earlier(double seconds) {
        return Math.max(0, sound.count() - (long) (seconds * rate));
    }

    private void renew() {
        recognizer.close();
        recognizer = recognizers.get();
        base = sound.count();
        added = 0;
    }

    @Override
    public void close() {
        recognizer.close();
    }
}
