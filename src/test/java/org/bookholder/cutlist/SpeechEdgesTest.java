package org.bookholder.cutlist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.bookholder.testing.Readings.s;

import java.util.Optional;
import java.util.Random;
import java.util.function.DoublePredicate;
import java.util.function.DoubleUnaryOperator;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class SpeechEdgesTest {
    private static final int RATE = 16_000;

    /** A voice from 1 to 2 s with a soft consonant before it from 0.9 s. */
    private static double word(double t) {
        return t >= 1 && t < 2 ? 8000 : t >= 0.9 && t < 1 ? 400 : 0;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.8, 0.88, 0.95, 1.0, 1.1})
    void findsTheBeginningWhateverTheErrorOfTheRecogniser(double recognised) throws ProblemException {
        StreamTime onset = new SpeechEdges(sound(SpeechEdgesTest::word)).onset(1, s(recognised), s(0.2));
        assertThat(onset.seconds()).isCloseTo(0.9, within(0.0101));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.85, 1.95, 2.0, 2.1, 2.2})
    void findsTheEndWhateverTheErrorOfTheRecogniser(double recognised) throws ProblemException {
        StreamTime offset = new SpeechEdges(sound(SpeechEdgesTest::word)).offset(1, s(recognised), s(2.9));
        assertThat(offset.seconds()).isCloseTo(2.0, within(0.0101));
    }

    @Test
    void theClosureOfAPlosiveIsPartOfTheWord() throws ProblemException {
        DoubleUnaryOperator act = t -> (t >= 1 && t < 1.5) || (t >= 1.57 && t < 1.6) ? 6000 : 0;
        assertThat(new SpeechEdges(sound(act)).offset(1, s(1.5), s(2.9)).seconds())
                .isCloseTo(1.6, within(0.0101));
    }

    @Test
    void earlierSpeechIsNotTakenForTheWord() throws ProblemException {
        DoubleUnaryOperator two = t -> (t >= 0.4 && t < 0.85) || (t >= 1 && t < 2) ? 6000 : 0;
        assertThat(new SpeechEdges(sound(two)).onset(1, s(1.02), s(0.85)).seconds())
                .isCloseTo(1, within(0.0101));
    }

    /** The recogniser gave the first word's beginning to the line that was broken off before it. */
    @Test
    void aSilenceThatIsHeardBeforeABeginningCounts() throws ProblemException {
        DoubleUnaryOperator two = t -> (t >= 0.2 && t < 0.6) || (t >= 0.8 && t < 2) ? 6000 : 0;
        SpeechEdges edges = new SpeechEdges(sound(two));
        StreamTime silent = edges.silenceBefore(1, s(0.98), s(0.98));
        assertThat(silent.seconds()).isCloseTo(0.6, within(0.0101));
        assertThat(edges.onset(1, s(0.98), silent).seconds()).isCloseTo(0.8, within(0.0101));
        assertThat(edges.silenceBefore(1, s(0.98), s(0.5))).isEqualTo(s(0.5));
    }

    /** A clip must not begin with the last moment of a word that was broken off; a breath before its line is longer. */
    @Test
    void aCutMovesBehindTheRemainsOfAnotherWord() throws ProblemException {
        DoubleUnaryOperator two = t -> (t >= 0.2 && t < 0.65) || (t >= 1 && t < 2) ? 6000 : 0;
        SpeechEdges edges = new SpeechEdges(sound(two));
        assertThat(edges.quietAfter(1, s(0.6), s(1)).seconds()).isCloseTo(0.65, within(0.0101));
        assertThat(edges.quietAfter(1, s(0.7), s(1))).isEqualTo(s(0.7));
        assertThat(edges.quietAfter(1, s(0.4), s(1))).isEqualTo(s(0.4));
        assertThat(edges.quietAfter(1, s(1), s(1))).isEqualTo(s(1));
    }

    @Test
    void trustsTheRecogniserIfThereIsNoSilenceNearby() throws ProblemException {
        DoubleUnaryOperator one = t -> t >= 0.2 && t < 2 ? 6000 : 0;
        assertThat(new SpeechEdges(sound(one)).silenceBefore(1, s(0.98), s(0.98)))
                .isEqualTo(s(0.98));
    }

    /** What a codec leaves of digital silence is none of the word's. */
    @Test
    void aLessDeepSilenceIsNotTakenForSound() throws ProblemException {
        DoubleUnaryOperator act = t -> t >= 1 && t < 2 ? 8000 : t >= 2.5 ? -12 : -9;
        assertThat(new SpeechEdges(sound(act)).offset(1, s(2.1), s(2.9)).seconds())
                .isCloseTo(2, within(0.0101));
    }

    /** Between two words that run into each other the voice dips once, wherever the dip lies. */
    @ParameterizedTest
    @ValueSource(doubles = {0.93, 1.0, 1.08})
    void theQuietestPlaceIsWhereTheVoiceDips(double dip) throws ProblemException {
        DoubleUnaryOperator act = t -> Math.abs(t - dip) < 0.012 ? 500 : 6000;
        StreamTime quietest = new SpeechEdges(sound(act)).quietest(1, s(0.9), s(1.1));
        assertThat(quietest.seconds()).isCloseTo(dip, within(0.012));
    }

    @Test
    void withoutSoundTheQuietestPlaceIsTheMiddle() throws ProblemException {
        assertThat(new SpeechEdges(TakeSound.NONE).quietest(1, s(0.9), s(1.1))).isEqualTo(s(1));
        assertThat(new SpeechEdges(sound(t -> 6000)).quietest(1, s(1), s(1.008)))
                .isEqualTo(s(1.004));
    }

    @Test
    void trustsTheRecogniserIfVoiceAndRoomCannotBeDistinguished() throws ProblemException {
        assertThat(new SpeechEdges(sound(t -> 3000)).onset(1, s(1), s(0.2))).isEqualTo(s(1));
        assertThat(new SpeechEdges(TakeSound.NONE).offset(1, s(1), s(2))).isEqualTo(s(1));
    }

    /** A closure is shorter than a tenth of a second; whatever is further away is another sound. */
    @ParameterizedTest
    @CsvSource({"0.09, 0.7, 2.2", "0.10, 1, 2", "0.15, 1, 2"})
    void aSoundATenthOfASecondAwayIsNotTheWords(double pause, double onset, double offset) throws ProblemException {
        SpeechEdges edges = edges(t -> (t >= 0.7 && t < 1 - pause) || (t >= 1 && t < 2) || (t >= 2 + pause && t < 2.2));
        assertThat(edges.onset(1, s(1), s(0.5))).isEqualTo(s(onset));
        assertThat(edges.offset(1, s(1.98), s(2.5))).isEqualTo(s(offset));
    }

    @Test
    void aPauseInsideAWordDoesNotMoveItsEnds() throws ProblemException {
        SpeechEdges edges = edges(t -> (t >= 1 && t < 1.1) || (t >= 1.25 && t < 1.75) || (t >= 1.88 && t < 2));
        assertThat(edges.onset(1, s(1), s(0.2))).isEqualTo(s(1));
        assertThat(edges.offset(1, s(2), s(2.5))).isEqualTo(s(2));
    }

    @Test
    void aWordStaysBetweenItsNeighbours() throws ProblemException {
        SpeechEdges edges = edges(t -> t >= 0.5 && t < 2 && !(t >= 0.9 && t < 0.95) && !(t >= 1.2 && t < 1.25));
        assertThat(edges.onset(1, s(0.8), s(0.7))).isEqualTo(s(0.7));
        assertThat(edges.offset(1, s(1.4), s(1.5))).isEqualTo(s(1.5));
        assertThat(edges.offset(1, s(1.5), s(1.5))).isEqualTo(s(1.5));
    }

    @Test
    void aSoftConsonantBelongsToTheWord() throws ProblemException {
        SpeechEdges edges = new SpeechEdges(Sounds.of(3, t -> t >= 1 && t < 2 ? 8000 : t >= 0.9 && t < 1 ? 100 : 6));
        assertThat(edges.onset(1, s(1), s(0.2))).isEqualTo(s(0.9));
    }

    @ParameterizedTest
    @CsvSource({
        "0.70, 0.80, 1.00, 0.70", // a tenth of a second is a silence
        "0.71, 0.80, 1.00, 0.95", // less is not
        "0.60, 0.80, 1.10, 0.60", // the word may begin three tenths before the recognised time
        "0.60, 0.79, 1.10, 0.95" // but not earlier
    })
    void aSilenceLastsATenthOfASecondAndIsNear(double quiet, double loud, double start, double silence)
            throws ProblemException {
        SpeechEdges edges = edges(t -> (t >= 0.2 && t < quiet) || (t >= loud && t < 2));
        assertThat(edges.silenceBefore(1, s(start), s(0.95))).isEqualTo(s(silence));
    }

    @Test
    void aSilenceIsSearchedForNineTenthsOfASecond() throws ProblemException {
        assertThat(edges(t -> t >= 0.95 && t < 2).silenceBefore(1, s(1), s(0.95)))
                .isEqualTo(s(0.1));
    }

    @Test
    void atTheEndOfTheRecordingTheCutIsInTheMiddle() throws ProblemException {
        assertThat(edges(t -> true).quietest(1, s(2.995), s(3.025))).isEqualTo(s(3.01));
    }

    /** A voice from 1 to 2 s, in a hum of about half its amplitude. */
    @ParameterizedTest
    @ValueSource(doubles = {0.85, 1.0, 1.1})
    void aHumMovesNoCut(double recognised) throws ProblemException {
        Random random = new Random(4);
        short[] samples = new short[3 * RATE];
        for (int i = 0; i < samples.length; i++) {
            boolean spoken = i >= RATE && i < 2 * RATE;
            double hum = 3_000 * Math.sin(2 * Math.PI * 50 * i / RATE) + 1_000 * Math.sin(2 * Math.PI * 100 * i / RATE);
            samples[i] = (short) (hum + random.nextGaussian() * (spoken ? 3_000 : 6));
        }
        SpeechEdges edges = new SpeechEdges(recording(samples));
        assertThat(edges.onset(1, s(recognised), s(0.2)).seconds()).isCloseTo(1, within(0.0201));
        assertThat(edges.offset(1, s(recognised + 0.95), s(2.9)).seconds()).isCloseTo(2, within(0.0201));
    }

    private static SpeechEdges edges(DoublePredicate spoken) {
        return new SpeechEdges(Sounds.of(3, t -> spoken.test(t) ? 6000 : 12));
    }

    /** Noise of the given amplitude over a room that murmurs at 12. */
    private static TakeSound sound(DoubleUnaryOperator amplitude) {
        Random random = new Random(3);
        short[] samples = new short[3 * RATE];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (short) (random.nextGaussian() * (12 + amplitude.applyAsDouble((double) i / RATE)) / 2);
        }
        return recording(samples);
    }

    private static TakeSound recording(short[] samples) {
        return (take, from, to) -> {
            int first = (int) from.samples(RATE);
            int beyond = (int) Math.min(samples.length, to.samples(RATE));
            return first >= beyond
                    ? Optional.empty()
                    : Optional.of(new AudioBlock(from, RATE, java.util.Arrays.copyOfRange(samples, first, beyond)));
        };
    }
}
