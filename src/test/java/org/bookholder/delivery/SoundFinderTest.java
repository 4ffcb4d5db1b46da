package org.bookholder.delivery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.bookholder.footage.Film;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Sound with one fault each, given to the finder sample by sample, in blocks of 1024. */
final class SoundFinderTest {
    private static final int RATE = 48_000;
    private static final int BLOCK = 1024;

    /** Louder than silence (-50 dBFS, a peak of 0.0032), and without clicks. */
    private final float[] tone = tone(10);

    @Test
    void nothingIsWrongWithATone() {
        assertThat(found(tone)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"3.0, false", "3.01, true"})
    void silenceIsFoundIfItIsLongEnough(double seconds, boolean found) {
        fill(tone, 2, 2 + seconds, 0);
        assertThat(found(tone)).isEqualTo(found ? List.of("look silent 2.000-5.010: silent for 3.0 s") : List.of());
    }

    @ParameterizedTest
    @CsvSource({"0.0031, 1", "0.0033, 0"})
    void silenceIsWhatIsBelowItsLevel(double level, int count) {
        fill(tone, 2, 7, level);
        assertThat(found(tone)).hasSize(count);
    }

    @Test
    void silenceAtTheEndIsFoundAndSilenceThroughoutIsAFault() {
        fill(tone, 6, 10, 0);
        assertThat(found(tone)).containsExactly("look silent 6.000-10.000: silent for 4.0 s");
        fill(tone, 0, 10, 0);
        assertThat(found(tone)).containsExactly("mend silent: the sound is silent throughout");
        assertThat(found(new float[0])).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"5, 0", "6, 1"})
    void samplesCutOffAtFullScaleAreCounted(int samples, int count) {
        for (int i = 0; i < samples; i++) {
            tone[RATE + i] = 1;
        }
        List<String> clipped =
                found(tone).stream().filter(text -> text.contains("clipped")).toList();
        assertThat(clipped).hasSize(count);
        assertThat(clipped).allMatch(text -> text.equals("mend clipped 1.000-1.000: 6 samples cut off at full scale"));
    }

    @Test
    void clippingHalfASecondApartIsOneStretchAndFurtherApartTwo() {
        for (double at : new double[] {1, 1.49, 3}) {
            fill(tone, at, at + 0.001, 1);
        }
        assertThat(found(tone).stream().filter(text -> text.contains("clipped")))
                .containsExactly(
                        "mend clipped 1.000-1.491: 96 samples cut off at full scale",
                        "mend clipped 3.000-3.001: 48 samples cut off at full scale");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 3.3333, 8})
    void aSingleJoltIsAClick(double at) {
        tone[(int) (at * RATE)] += 0.3f;
        assertThat(found(tone))
                .singleElement()
                .asString()
                .startsWith("look clicks " + time(at))
                .endsWith(": a click");
    }

    @Test
    void joltsCloseTogetherAreNoClickAsInAConsonant() {
        for (int i = 0; i < 5; i++) {
            tone[3 * RATE + 200 * i] += 0.3f;
        }
        tone[5 * RATE] += 0.3f;
        tone[5 * RATE + 900] += 0.25f;
        assertThat(found(tone)).isEmpty();
    }

    @Test
    void aJoltThatNobodyHearsIsNoClick() {
        tone[3 * RATE] += 0.01f;
        assertThat(found(tone)).isEmpty();
    }

    /** ITU-R BS.1770: a sine of 997 Hz at 0 dBFS in one of two channels is -3.01 LUFS; in both, or from one to both, 0. */
    @Test
    void aSingleChannelIsAsLoudAsTwoOfTheSame() {
        float[] sine = new float[10 * RATE];
        for (int i = 0; i < sine.length; i++) {
            sine[i] = (float) (0.1 * Math.sin(2 * Math.PI * 997 * i / RATE));
        }
        assertThat(loudness(List.of(1.0), sine)).isCloseTo(-20, within(0.1));
        assertThat(loudness(List.of(1.0, 1.0), sine, sine)).isCloseTo(-20, within(0.1));
        assertThat(loudness(List.of(1.0, 1.0), sine, new float[sine.length])).isCloseTo(-23.01, within(0.1));
        assertThat(loudness(List.of(1.0, 0.0), new float[sine.length], sine)).isLessThan(-60);
    }

    private static double loudness(List<Double> weights, float[]... channels) {
        SoundFinder finder = finder(weights, new Findings());
        finder.hear(StreamTime.ZERO, channels);
        finder.end(StreamTime.ofSamples(channels[0].length, RATE));
        double integrated = finder.loudness().integrated();
        return Double.isFinite(integrated) ? integrated : -120;
    }

    private static List<String> found(float[] samples) {
        Findings findings = new Findings();
        SoundFinder finder = finder(List.of(1.0), findings);
        for (int at = 0; at < samples.length; at += BLOCK) {
            float[] block = Arrays.copyOfRange(samples, at, Math.min(samples.length, at + BLOCK));
            finder.hear(StreamTime.ofSamples(at, RATE), new float[][] {block});
        }
        finder.end(StreamTime.ofSamples(samples.length, RATE));
        return findings.all().stream().map(SoundFinderTest::described).toList();
    }

    private static SoundFinder finder(List<Double> weights, Findings findings) {
        Film.Sound sound = new Film.Sound("aac", RATE, weights.size(), 0, weights);
        return new SoundFinder(sound, ProfileForm.usual(), findings);
    }

    static String described(Finding finding) {
        String place = finding.place()
                .map(p -> " " + time(p.start().seconds()) + "-" + time(p.end().seconds()))
                .orElse("");
        return CheckText.of(finding.grade()) + " " + finding.kind() + place + ": " + finding.what();
    }

    private static String time(double seconds) {
        return String.format(Locale.ROOT, "%.3f", seconds);
    }

    private static float[] tone(double seconds) {
        float[] samples = new float[(int) (seconds * RATE)];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (float) (0.1 * Math.sin(2 * Math.PI * 200 * i / RATE));
        }
        return samples;
    }

    private static void fill(float[] samples, double from, double to, double level) {
        Arrays.fill(samples, (int) Math.round(from * RATE), (int) Math.round(to * RATE), (float) level);
    }
}
