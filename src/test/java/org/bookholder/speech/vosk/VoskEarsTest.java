package org.bookholder.speech.vosk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.Ear;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Grammar;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Execution(ExecutionMode.CONCURRENT)
final class VoskEarsTest {
    private static VoskEars ears;
    private static short[] sound;

    @BeforeAll
    static void load() throws Exception {
        Hearing.needs();
        ears = VoskEars.load(Hearing.MODEL);
        sound = Hearing.twoSentences();
    }

    @AfterAll
    static void close() {
        if (ears != null) {
            ears.close();
        }
    }

    @Test
    void theScriptEarHearsWhatIsReadWordForWord() {
        try (Ear ear = ears.scriptEar(Hearing.grammar(), Hearing.RATE)) {
            List<RecognizedWord> words = Hearing.finals(Hearing.hear(ear, Hearing.RATE, sound));
            assertThat(Hearing.texts(words)).isEqualTo(Hearing.together(Hearing.YOUNG_MAN, Hearing.SELFISH));
            assertThat(words)
                    .allMatch(w -> w.confidence() > 0.5)
                    .extracting(w -> w.start())
                    .isSorted();
        }
    }

    @Test
    void theOpenEarHearsMostOfTheWords() {
        try (Ear ear = ears.openEar(Hearing.RATE)) {
            List<String> words = Hearing.texts(Hearing.finals(Hearing.hear(ear, Hearing.RATE, sound)));
            assertThat(words).contains("young", "man", "unless", "rather", "selfish");
            assertThat(ear.kind()).isEqualTo(EarKind.OPEN);
        }
    }

    @Test
    void wordsAppearInThePartialTextSoonAfterTheyEnd() {
        try (Ear ear = ears.scriptEar(Hearing.grammar(), Hearing.RATE)) {
            List<Hypothesis> all = Hearing.hear(ear, Hearing.RATE, sound);
            RecognizedWord disposed = Hearing.finals(all).get(5);
            Hypothesis first = all.stream()
                    .filter(h -> h instanceof Hypothesis.Partial p && p.words().contains("disposed"))
                    .findFirst()
                    .orElseThrow();
            double late = first.heardTo().seconds() - disposed.end().seconds();
            assertThat(late).isLessThan(0.5);
        }
    }

    @Test
    void partialsAreReportedOnlyWhenTheyChange() {
        try (Ear ear = ears.scriptEar(Hearing.grammar(), Hearing.RATE)) {
            List<String> last = List.of();
            for (Hypothesis hypothesis : Hearing.hear(ear, Hearing.RATE, sound)) {
                if (hypothesis instanceof Hypothesis.Partial p) {
                    assertThat(p.words()).isNotEmpty().isNotEqualTo(last);
                    last = p.words();
                } else {
                    last = List.of();
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {8_000, 11_025, 22_050, 44_100, 48_000, 96_000})
    void hearsTheSameAtOtherRates(int rate) {
        try (Ear ear = ears.scriptEar(Hearing.grammar(), rate);
                Ear reference = ears.scriptEar(Hearing.grammar(), Hearing.RATE)) {
            List<RecognizedWord> expected = Hearing.finals(Hearing.hear(reference, Hearing.RATE, sound));
            List<RecognizedWord> words = Hearing.finals(Hearing.hear(ear, rate, resampled(sound, rate)));
            assertThat(Hearing.texts(words)).isEqualTo(Hearing.texts(expected));
            for (int i = 0; i < words.size(); i++) {
                double start = expected.get(i).start().seconds();
                assertThat(words.get(i).start().seconds()).isCloseTo(start, offset(0.1));
            }
        }
    }

    @Test
    void speechOutsideTheScriptIsMarkedUnknown() throws Exception {
        try (Ear ear = ears.scriptEar(new Grammar(List.of(Hearing.words("spring is when a hive decides"))), 16_000)) {
            List<RecognizedWord> words = Hearing.finals(Hearing.hear(ear, Hearing.RATE, sound));
            assertThat(words).anyMatch(RecognizedWord::unknown);
        }
    }

    @Test
    void timesContinueAfterAFinalAGapAndFinishing() {
        try (Ear ear = ears.scriptEar(Hearing.grammar(), Hearing.RATE)) {
            StreamTime shortGap = StreamTime.ofSeconds(1.5);
            StreamTime longGap = StreamTime.ofSeconds(3_600);
            StreamTime length = StreamTime.ofSamples(sound.length, Hearing.RATE);
            StreamTime first = StreamTime.ofSeconds(100);
            StreamTime second = first.plus(length).plus(shortGap);
            StreamTime third = second.plus(length).plus(longGap);
            StreamTime fourth = third.plus(length);
            List<Hypothesis> all = new ArrayList<>();
            for (StreamTime start : List.of(first, second, third)) {
                FakeAudioSource.blocks(Hearing.RATE, start, sound).forEach(b -> all.addAll(ear.hear(b)));
            }
            all.addAll(ear.finish());
            FakeAudioSource.blocks(Hearing.RATE, fourth, sound).forEach(b -> all.addAll(ear.hear(b)));
            all.addAll(ear.finish());
            List<RecognizedWord> words = Hearing.finals(all);
            int count = Hearing.YOUNG_MAN.size() + Hearing.SELFISH.size();
            assertThat(words).hasSize(4 * count);
            double inClip = words.get(0).start().since(first).seconds();
            List<StreamTime> starts = List.of(first, second, third, fourth);
            for (int i = 0; i < starts.size(); i++) {
                double heard = words.get(i * count).start().since(starts.get(i)).seconds();
                assertThat(heard).isCloseTo(inClip, offset(0.1));
            }
        }
    }

    @Test
    void aFreshRecogniserTakesOverWithoutLosingAWordOrTheTime() throws Exception {
        try (VoskEars renewing = VoskEars.load(Hearing.MODEL, 1);
                Ear ear = renewing.scriptEar(Hearing.grammar(), Hearing.RATE);
                Ear reference = ears.scriptEar(Hearing.grammar(), Hearing.RATE)) {
            short[] twice = Hearing.join(sound, sound);
            List<RecognizedWord> expected = Hearing.finals(Hearing.hear(reference, Hearing.RATE, twice));
            List<RecognizedWord> words = Hearing.finals(Hearing.hear(ear, Hearing.RATE, twice));
            assertThat(Hearing.texts(words)).isEqualTo(Hearing.texts(expected));
            for (int i = 0; i < words.size(); i++) {
                double end = expected.get(i).end().seconds();
                assertThat(words.get(i).end().seconds()).isCloseTo(end, offset(0.1));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {-80, -65, -50, -40})
    void aNoisyRoomIsNotTakenForSpeech(double decibels) {
        try (Ear script = ears.scriptEar(Hearing.grammar(), Hearing.RATE);
                Ear open = ears.openEar(Hearing.RATE)) {
            short[] noise = noise(decibels, 20);
            assertThat(Hearing.finals(Hearing.hear(script, Hearing.RATE, noise)))
                    .isEmpty();
            assertThat(Hearing.finals(Hearing.hear(open, Hearing.RATE, noise))).isEmpty();
        }
    }

    @Test
    void anUtteranceEndsInANoisyRoomToo() {
        short[] noise = noise(-50, 5);
        short[] noisy = Hearing.join(noise, sound, noise, sound);
        try (Ear ear = ears.scriptEar(Hearing.grammar(), Hearing.RATE)) {
            List<Hypothesis> all = Hearing.hear(ear, Hearing.RATE, noisy);
            List<String> both = Hearing.together(Hearing.YOUNG_MAN, Hearing.SELFISH);
            assertThat(Hearing.texts(Hearing.finals(all))).isEqualTo(Hearing.together(both, both));
            double end = 5 + (double) sound.length / Hearing.RATE;
            assertThat(all)
                    .anyMatch(h -> h instanceof Hypothesis.Final
                            && Math.abs(h.heardTo().seconds() - end) < 2);
        }
    }

    @Test
    void aVeryQuietReadingIsHeard() {
        short[] quiet = sound.clone();
        for (int i = 0; i < quiet.length; i++) {
            quiet[i] = (short) Math.round(quiet[i] / 100.0);
        }
        try (Ear ear = ears.scriptEar(Hearing.grammar(), Hearing.RATE)) {
            List<RecognizedWord> words = Hearing.finals(Hearing.hear(ear, Hearing.RATE, quiet));
            assertThat(Hearing.texts(words)).isEqualTo(Hearing.together(Hearing.YOUNG_MAN, Hearing.SELFISH));
        }
    }

    @Test
    void silenceGivesNoHypotheses() {
        try (Ear ear = ears.openEar(Hearing.RATE)) {
            assertThat(Hearing.hear(ear, Hearing.RATE, new short[Hearing.RATE * 30]))
                    .isEmpty();
        }
    }

    @Test
    void theVocabularyKnowsCommonWordsOnly() {
        assertThat(ears.vocabulary().contains("flour")).isTrue();
        assertThat(ears.vocabulary().contains("don't")).isTrue();
        assertThat(ears.vocabulary().contains("Flour")).isFalse();
        assertThat(ears.vocabulary().contains("xylqrt")).isFalse();
        assertThat(ears.vocabulary().contains("")).isFalse();
        assertThat(ears.vocabulary().contains("na\u00efve")).isFalse();
    }

    @Test
    void aGrammarWordOutsideTheVocabularyIsRefusedByName() {
        Grammar grammar = new Grammar(List.of(List.of("flour", "xylqrt")));
        assertThat(assertThrows(IllegalArgumentException.class, () -> ears.scriptEar(grammar, 16_000)))
                .hasMessageContaining("'xylqrt'");
    }

    @Test
    void wrongRatesAndBlocksOutOfOrderAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> ears.openEar(0));
        try (Ear ear = ears.openEar(Hearing.RATE)) {
            AudioBlock other = new AudioBlock(StreamTime.ZERO, 48_000, new short[480]);
            assertThrows(IllegalArgumentException.class, () -> ear.hear(other));
            ear.hear(new AudioBlock(StreamTime.ofSeconds(5), Hearing.RATE, new short[640]));
            AudioBlock earlier = new AudioBlock(StreamTime.ofSeconds(4), Hearing.RATE, new short[640]);
            assertThrows(IllegalArgumentException.class, () -> ear.hear(earlier));
        }
    }

    private static short[] noise(double decibels, int seconds) {
        Random random = new Random(7);
        double size = 32_768 * Math.pow(10, decibels / 20);
        short[] samples = new short[Hearing.RATE * seconds];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (short) Math.round(random.nextGaussian() * size);
        }
        return samples;
    }

    /** Linear interpolation: crude, and good enough for a recogniser. */
    private static short[] resampled(short[] in, int rate) {
        short[] out = new short[(int) ((long) in.length * rate / Hearing.RATE) - rate / Hearing.RATE - 1];
        for (int i = 0; i < out.length; i++) {
            double at = (double) i * Hearing.RATE / rate;
            int left = (int) at;
            out[i] = (short) Math.round(in[left] + (in[left + 1] - in[left]) * (at - left));
        }
        return out;
    }
}
