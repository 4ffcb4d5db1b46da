package org.bookholder.speech.vosk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.Ear;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.NoiseGate;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;

/**
 * One ear: audio through the gate to a {@link ContinuousRecognizer}, its words turned into hypotheses.
 *
 * <p>A short gap in the audio is heard as silence; a long one ends the utterance, and recognition starts afresh after
 * it.
 */
final class VoskEar implements Ear {
    private static final StreamTime LONGEST_FILLED_GAP = StreamTime.ofSeconds(5);

    /** Block times are rounded to ticks; only a difference larger than this is a gap. */
    private static final StreamTime ROUNDING = StreamTime.ofSeconds(0.001);

    private static final int PIECES_PER_SECOND = 10;

    /** An utterance at least this long is ended in a short pause that would not end a shorter one. */
    private static final StreamTime LONG = StreamTime.ofSeconds(2.4);

    private static final StreamTime PAUSE = StreamTime.ofSeconds(0.35);

    /** An utterance at least this long is ended in an even shorter pause. */
    private static final StreamTime VERY_LONG = StreamTime.ofSeconds(7);

    private static final StreamTime SHORT_PAUSE = StreamTime.ofSeconds(0.24);

    /** An utterance this long is divided between two words, in whatever pause there is. */
    private static final StreamTime LONGEST = StreamTime.ofSeconds(8);

    private final EarKind kind;
    private final int rate;
    private final Function<StreamTime, ContinuousRecognizer> listenings;
    private final Runnable onClose;
    private NoiseGate gate = new NoiseGate();
    private @Nullable ContinuousRecognizer listening;
    private StreamTime heardTo = StreamTime.ZERO;
    private List<String> lastPartial = List.of();
    private StreamTime begun = StreamTime.ZERO;
    private boolean closed;

    /**
     * Makes an ear.
     *
     * @param kind which of the two
     * @param rate samples per second
     * @param listenings creates a recogniser that starts at a time
     * @param onClose called once, when native memory has been freed
     */
    VoskEar(EarKind kind, int rate, Function<StreamTime, ContinuousRecognizer> listenings, Runnable onClose) {
        this.kind = kind;
        this.rate = rate;
        this.listenings = listenings;
        this.onClose = onClose;
    }

    @Override
    public EarKind kind() {
        return kind;
    }

    @Override
    public List<Hypothesis> hear(AudioBlock block) {
        checkOpen();
        if (block.rate() != rate) {
            throw new IllegalArgumentException("block rate (" + block.rate() + ") must be the ear's (" + rate + ")");
        }
        List<Hypothesis> news = new ArrayList<>();
        ContinuousRecognizer l = listeningAt(block.start(), news);
        heardTo = block.end();
        gate.pass(block).forEach(samples -> hear(l, samples, news));
        List<String> partial = l.partial();
        if (!partial.isEmpty() && !partial.equals(lastPartial)) {
            begun = lastPartial.isEmpty() ? heardTo : begun;
            lastPartial = partial;
            news.add(new Hypothesis.Partial(kind, heardTo, partial));
        }
        endIfLong(l, news);
        return news;
    }

    /**
     * Ends long utterances in short pauses, because fast readers leave no pause in which the recogniser ends them by
     * itself.
     */
    private void endIfLong(ContinuousRecognizer l, List<Hypothesis> news) {
        if (lastPartial.isEmpty()) {
            return;
        }
        StreamTime length = heardTo.since(begun);
        if (LONG.isBefore(length) && PAUSE.compareTo(gate.quiet()) <= 0) {
            addFinal(l.end(), news);
        } else if (VERY_LONG.isBefore(length) && SHORT_PAUSE.compareTo(gate.quiet()) <= 0) {
            addFinal(l.flush(), news);
        } else if (LONGEST.isBefore(length)) {
            divide(l, news);
        }
    }

    /** Ends the utterance between two of its last words; the words after that begin the next one. */
    private void divide(ContinuousRecognizer l, List<Hypothesis> news) {
        ContinuousRecognizer.Divided first = l.divide();
        lastPartial = first.rest().isPresent() ? List.of() : l.partial();
        begun = first.end();
        StreamTime end = StreamTime.min(first.end(), heardTo);
        news.add(new Hypothesis.Final(kind, heardTo, first.words(), end, lastPartial));
        first.rest().ifPresent(words -> addFinal(words, news));
    }

    /** The recogniser for audio at {@code start}, after the gap since the last block was handled. */
    private ContinuousRecognizer listeningAt(StreamTime start, List<Hypothesis> news) {
        ContinuousRecognizer l = listening;
        StreamTime gap = start.since(heardTo);
        if (l != null && LONGEST_FILLED_GAP.isBefore(gap)) {
            news.addAll(finish());
            l = null;
        }
        if (l == null) {
            l = listenings.apply(start);
            listening = l;
            gate = new NoiseGate();
        } else if (ROUNDING.isBefore(gap)) {
            fill(l, gap, news);
        } else if (ROUNDING.isBefore(heardTo.since(start))) {
            throw new IllegalArgumentException(
                    "block start (" + start + ") must not lie before what was heard (" + heardTo + ")");
        }
        return l;
    }

    private void fill(ContinuousRecognizer l, StreamTime gap, List<Hypothesis> news) {
        gate.flush().forEach(samples -> hear(l, samples, news));
        long left = gap.samples(rate);
        while (left > 0) {
            int piece = (int) Math.min(left, rate / PIECES_PER_SECOND);
            hear(l, new short[piece], news);
            left -= piece;
        }
    }

    private void hear(ContinuousRecognizer l, short[] samples, List<Hypothesis> news) {
        Optional<List<RecognizedWord>> ended = l.hear(samples);
        ended.ifPresent(words -> addFinal(words, news));
    }

    /** During long silence empty utterances end one after another; they are not reported. */
    private void addFinal(List<RecognizedWord> words, List<Hypothesis> news) {
        if (!words.isEmpty() || !lastPartial.isEmpty()) {
            news.add(new Hypothesis.Final(kind, heardTo, words));
        }
        lastPartial = List.of();
    }

    @Override
    public List<Hypothesis> finish() {
        checkOpen();
        ContinuousRecognizer l = listening;
        if (l == null) {
            return List.of();
        }
        List<Hypothesis> news = new ArrayList<>();
        gate.flush().forEach(samples -> hear(l, samples, news));
        addFinal(l.finish(), news);
        l.close();
        listening = null;
        return news;
    }

    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        if (listening != null) {
            listening.close();
            listening = null;
        }
        onClose.run();
    }

    private void checkOpen() {
        if (closed) {
            throw new IllegalStateException("ear is closed");
        }
    }
}
