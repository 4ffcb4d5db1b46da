package org.bookholder.speech.vosk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.Ear;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** A voice that makes no pause in which an utterance could end: sentences without the silence around them. */
@Execution(ExecutionMode.CONCURRENT)
final class UnbrokenSpeechTest {
    /** Longest time from a word's end until it is final. */
    private static final double LATEST_SECONDS = 9;

    private static final int TIMES = 4;

    private static VoskEars ears;
    private static short[] once;
    private static short[] sound;

    @BeforeAll
    static void load() throws Exception {
        Hearing.needs();
        ears = VoskEars.load(Hearing.MODEL);
        once = Hearing.join(voice(880), voice(890));
        short[] quiet = new short[Hearing.RATE / 2];
        sound = Hearing.join(quiet, once, once, once, once);
    }

    @AfterAll
    static void close() {
        if (ears != null) {
            ears.close();
        }
    }

    @Test
    void eachWordIsFinalWithinSecondsAndNoneIsLost() {
        List<Hypothesis> all = heard();
        List<RecognizedWord> words = Hearing.finals(all);
        assertThat(Hearing.texts(words)).isEqualTo(read());
        assertThat(words).extracting(RecognizedWord::start).isSorted();
        for (Hypothesis.Final utterance : finals(all)) {
            for (RecognizedWord word : utterance.words()) {
                double late = utterance.heardTo().seconds() - word.end().seconds();
                assertThat(late).as(word.text()).isLessThan(LATEST_SECONDS);
            }
        }
    }

    @Test
    void wordsKeepTheirTimesAfterADivision() {
        List<RecognizedWord> words = Hearing.finals(heard());
        int count = words.size() / TIMES;
        double length = (double) once.length / Hearing.RATE;
        for (int i = count; i < words.size(); i++) {
            double before = words.get(i - count).start().seconds();
            assertThat(words.get(i).start().seconds() - before)
                    .as("%s, number %d", words.get(i).text(), i)
                    .isCloseTo(length, offset(0.1));
        }
    }

    @Test
    void aDivisionLiesBetweenItsWordsAndTellsWhatFollows() {
        List<Hypothesis> all = heard();
        List<Hypothesis.Final> divided =
                finals(all).stream().filter(f -> f.end().isBefore(f.heardTo())).toList();
        assertThat(divided).isNotEmpty();
        for (Hypothesis.Final utterance : divided) {
            RecognizedWord last = utterance.words().get(utterance.words().size() - 1);
            assertThat(last.end()).isLessThanOrEqualTo(utterance.end());
            assertThat(utterance.next()).isNotEmpty();
            Hypothesis.Final following = finals(all).get(finals(all).indexOf(utterance) + 1);
            assertThat(Hearing.texts(following.words()))
                    .startsWith(utterance.next().get(0));
            assertThat(following.words().get(0).start()).isGreaterThanOrEqualTo(utterance.end());
        }
    }

    @Test
    void aFreshRecogniserTakesOverAtADivision() throws Exception {
        try (VoskEars renewing = VoskEars.load(Hearing.MODEL, 1);
                Ear ear = renewing.scriptEar(Hearing.grammar(), Hearing.RATE)) {
            List<RecognizedWord> words = Hearing.finals(Hearing.hear(ear, Hearing.RATE, sound));
            assertThat(Hearing.texts(words)).isEqualTo(read());
            List<RecognizedWord> expected = Hearing.finals(heard());
            for (int i = 0; i < words.size(); i++) {
                assertThat(words.get(i).start().seconds())
                        .isCloseTo(expected.get(i).start().seconds(), offset(0.1));
            }
        }
    }

    /** What is said. */
    private static List<String> read() {
        List<String> words = new ArrayList<>();
        for (int i = 0; i < TIMES; i++) {
            words.addAll(Hearing.together(Hearing.YOUNG_MAN, Hearing.SELFISH));
        }
        return words;
    }

    private static List<Hypothesis> heard() {
        try (Ear ear = ears.scriptEar(Hearing.grammar(), Hearing.RATE)) {
            return Hearing.hear(ear, Hearing.RATE, sound);
        }
    }

    private static List<Hypothesis.Final> finals(List<Hypothesis> all) {
        return all.stream()
                .filter(Hypothesis.Final.class::isInstance)
                .map(Hypothesis.Final.class::cast)
                .toList();
    }

    /** A clip from its first to its last sample of some loudness. */
    private static short[] voice(int clip) throws ProblemException {
        short[] samples = Wav.samples(Hearing.clip(clip));
        int loud = 1_000;
        int from = 0;
        while (Math.abs(samples[from]) < loud) {
            from++;
        }
        int to = samples.length;
        while (Math.abs(samples[to - 1]) < loud) {
            to--;
        }
        return Arrays.copyOfRange(samples, from, to);
    }
}
