package org.bookholder.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.assertj.core.data.Offset;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.wav.WavSource;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The signals of EBU Tech 3341 (v4, 2023), table 1, and of EBU Tech 3342, made here as they are described there, with the
 * tolerances given there; and FFmpeg's own meter as a second opinion.
 */
@Execution(ExecutionMode.CONCURRENT)
final class LoudnessMeterTest {
    private static final int RATE = Tones.RATE;
    private static final Offset<Double> EXACT = within(0.1);

    /** ITU-R BS.1770-4, tables 1 and 2: coefficients at 48 kHz. */
    @Test
    void filtersAreThoseOfTheRecommendation() {
        assertThat(KWeighting.shelf(RATE).coefficients())
                .containsExactly(
                        new double[] {
                            1.53512485958697, -2.69169618940638, 1.19839281085285, -1.69065929318241, 0.73248077421585
                        },
                        within(1e-8));
        assertThat(KWeighting.highPass(RATE).coefficients())
                .containsExactly(new double[] {1, -2, 1, -1.99004745483398, 0.99007225036621}, within(1e-8));
    }

    /** ITU-R BS.1770-4: a full-scale sine of 997 Hz in one channel reads -3.01; here at any rate, as exact as Tech 3341. */
    @ParameterizedTest
    @ValueSource(ints = {16_000, 44_100, 48_000, 96_000})
    void aFullScaleSineInOneChannel(int rate) {
        assertThat(measured(rate, 1, Tones.sine(997, 0, rate, 5)).integrated()).isCloseTo(-3.01, EXACT);
    }

    @ParameterizedTest
    @CsvSource({"-23", "-33"})
    void signals1And2AreAsLoudAsTheyAre(double level) {
        LoudnessMeter meter = stereo(Tones.sine(1_000, level, RATE, 20));
        assertThat(meter.momentary()).isCloseTo(level, EXACT);
        assertThat(meter.shortTerm()).isCloseTo(level, EXACT);
        assertThat(meter.reading().integrated()).isCloseTo(level, EXACT);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "3: 10 -36, 60 -23, 10 -36",
                "4: 10 -72, 10 -36, 60 -23, 10 -36, 10 -72",
                "5: 20 -26, 20.1 -20, 20 -26"
            })
    void signals3To5AreGated(String signal) {
        assertThat(stereo(signal(signal)).reading().integrated()).isCloseTo(-23, EXACT);
    }

    @Test
    void signal6WeighsTheChannelsBehind() {
        LoudnessMeter meter = new LoudnessMeter(RATE, 1, 1, 1, 1.41, 1.41);
        meter.hear(new float[][] {
            Tones.sine(1_000, -28, RATE, 20),
            Tones.sine(1_000, -28, RATE, 20),
            Tones.sine(1_000, -24, RATE, 20),
            Tones.sine(1_000, -30, RATE, 20),
            Tones.sine(1_000, -30, RATE, 20)
        });
        assertThat(meter.reading().integrated()).isCloseTo(-23, EXACT);
    }

    @Test
    void signal9KeepsAConstantShortTermLoudness() {
        float[] once = signal("9: 1.34 -20, 1.66 -30");
        float[] all = Tones.joined(once, once, once, once, once);
        LoudnessMeter meter = new LoudnessMeter(RATE, 1, 1);
        for (int tenth = 0; tenth < 150; tenth++) {
            meter.hear(both(java.util.Arrays.copyOfRange(all, tenth * 4800, (tenth + 1) * 4800)));
            if (tenth >= 30) {
                assertThat(meter.shortTerm()).isCloseTo(-23, EXACT);
            }
        }
    }

    /** Three seconds of tone are found in full wherever they begin: the window slides. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 7, 10, 13, 19})
    void signal10FindsTheLoudestThreeSeconds(int step) {
        float[] signal =
                Tones.joined(Tones.silence(RATE, step * 0.15), Tones.sine(1_000, -23, RATE, 3), Tones.silence(RATE, 1));
        assertThat(stereo(signal).reading().loudestShortTerm()).isCloseTo(-23, EXACT);
    }

    @Test
    void signal11FollowsARisingShortTermLoudness() {
        LoudnessMeter meter = new LoudnessMeter(RATE, 1, 1);
        for (int step = 0; step < 20; step++) {
            double highest = Double.NEGATIVE_INFINITY;
            float[] segment = Tones.joined(
                    Tones.silence(RATE, step * 0.15),
                    Tones.sine(1_000, step - 38, RATE, 3),
                    Tones.silence(RATE, 3 - step * 0.15));
            for (int tenth = 0; tenth < 60; tenth++) {
                meter.hear(both(java.util.Arrays.copyOfRange(segment, tenth * 4800, (tenth + 1) * 4800)));
                highest = Math.max(highest, meter.shortTerm());
            }
            assertThat(highest).as("step " + step).isCloseTo(step - 38, EXACT);
        }
    }

    /** A live meter shows the last 400 ms only; anything louder before that no longer counts. */
    @Test
    void momentaryLoudnessForgetsEarlierSound() {
        LoudnessMeter meter = stereo(Tones.sine(1_000, -20, RATE, 5));
        meter.hear(both(Tones.sine(1_000, -40, RATE, 0.4)));
        assertThat(meter.momentary()).isCloseTo(-40, within(0.2));
        assertThat(meter.reading().loudestMomentary()).isCloseTo(-20, EXACT);
    }

    @Test
    void signal12KeepsAConstantMomentaryLoudness() {
        float[] once = signal("12: 0.18 -20, 0.22 -30");
        LoudnessMeter meter = new LoudnessMeter(RATE, 1, 1);
        for (int i = 0; i < 25; i++) {
            meter.hear(both(once));
            if (i >= 3) {
                assertThat(meter.momentary()).isCloseTo(-23, EXACT);
            }
        }
    }

    /** Signals 15 to 19: the wave between the samples is higher than they are. */
    @ParameterizedTest
    @CsvSource({"4, 0, 0.5, -6", "4, 45, 0.5, -6", "6, 60, 0.5, -6", "8, 67.5, 0.5, -6", "4, 45, 1.41, 3"})
    void truePeaksLieBetweenTheSamples(int period, double degrees, double amplitude, double expected) {
        float[] samples = new float[RATE];
        for (int i = 0; i < RATE; i++) {
            // Faded in and out, so that no edge rings.
            double fade = Math.min(1, Math.min(i, RATE - i) / 4800.0);
            samples[i] = (float) (fade * amplitude * Math.sin(2 * Math.PI * i / period + Math.toRadians(degrees)));
        }
        assertThat(measured(RATE, 1, samples).truePeak()).isBetween(expected - 0.4, expected + 0.2);
    }

    /**
     * Signals 20 to 23: a sine of a sixth of the rate, half as high as full scale, in which one period of a quarter of the rate
     * reaches it; made at four times the rate, of which every fourth sample is taken, from the first, second, third or fourth on.
     * Whether it is filtered before is not said in the transcriptions at hand, so both are tried.
     */
    @ParameterizedTest
    @CsvSource({"0, false", "1, false", "2, false", "3, false", "0, true", "1, true", "2, true", "3, true"})
    void aSinglePeakBetweenTheSamplesIsFound(int offset, boolean filtered) {
        double[] fine = filtered ? lowPassed(oneHighPeriod()) : oneHighPeriod();
        float[] samples = new float[fine.length / 4];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (float) fine[4 * i + offset];
        }
        assertThat(measured(RATE, 1, samples).truePeak()).isBetween(-0.4, 0.2);
    }

    private static double[] oneHighPeriod() {
        double[] fine = new double[4 * RATE];
        int middle = fine.length / 2 / 24 * 24;
        for (int i = 0; i < fine.length; i++) {
            double fade = Math.min(1, Math.min(i, fine.length - i) / 19_200.0);
            boolean high = i >= middle && i < middle + 16;
            double low = 0.5 * Math.sin(2 * Math.PI * (i < middle ? i : i - middle - 16) / 24);
            fine[i] = fade * (high ? Math.sin(2 * Math.PI * (i - middle) / 16) : low);
        }
        return fine;
    }

    /** Down to half the rate that is left afterwards: a sinc under a Hann window. */
    private static double[] lowPassed(double[] fine) {
        int half = 128;
        double[] taps = new double[2 * half + 1];
        for (int k = -half; k <= half; k++) {
            double sinc = k == 0 ? 0.25 : Math.sin(Math.PI * k / 4) / (Math.PI * k);
            taps[half + k] = sinc * 0.5 * (1 + Math.cos(Math.PI * k / half));
        }
        double[] out = new double[fine.length];
        for (int i = half; i < fine.length - half; i++) {
            for (int k = -half; k <= half; k++) {
                out[i] += fine[i + k] * taps[half + k];
            }
        }
        return out;
    }

    /** EBU Tech 3342: loudness range, within 1 LU. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "1: 20 -20, 20 -30;10",
                "2: 20 -20, 20 -15;5",
                "3: 20 -40, 20 -20;20",
                "4: 20 -50, 20 -35, 20 -20, 20 -35, 20 -50;15"
            })
    void theRangeOfLoudness(String signal, double range) {
        assertThat(stereo(signal(signal)).reading().range()).isCloseTo(range, within(1.0));
    }

    @Test
    void silenceHasNoLoudness() {
        LoudnessReading reading = measured(RATE, 1, Tones.silence(RATE, 5));
        assertThat(reading.integrated()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(reading.truePeak()).isEqualTo(-120);
        assertThat(measured(RATE, 1, new float[100]).integrated()).isEqualTo(Double.NEGATIVE_INFINITY);
    }

    /** FFmpeg's ebur128 on the demo's reading. */
    @Test
    void agreesWithAnotherMeterOnSpeech() throws ProblemException, IOException {
        Needs.program("ffmpeg", "Debian package ffmpeg");
        Path recording = Path.of("demo-scripts/lesson-1.wav");
        String said = output(
                "ffmpeg",
                "-hide_banner",
                "-nostats",
                "-i",
                recording.toString(),
                "-filter:a",
                "ebur128=peak=true",
                "-f",
                "null",
                "-");
        LoudnessReading reading = measured(recording);

        assertThat(reading.integrated()).isCloseTo(figure(said, "I:"), EXACT);
        assertThat(reading.range()).isCloseTo(figure(said, "LRA:"), within(0.5));
        assertThat(reading.truePeak()).isCloseTo(figure(said, "Peak:"), within(0.3));
    }

    private static double figure(String said, String name) {
        Matcher matcher =
                Pattern.compile("\\s" + name + "\\s+(-?[\\d.]+)").matcher(said.substring(said.lastIndexOf("Summary:")));
        assertThat(matcher.find()).as(said).isTrue();
        return Double.parseDouble(matcher.group(1));
    }

    private static String output(String... command) throws IOException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        process.getOutputStream().close();
        return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }

    private static LoudnessReading measured(Path recording) throws ProblemException {
        try (WavSource source = WavSource.open(recording)) {
            LoudnessMeter meter = new LoudnessMeter(source.rate(), 1);
            while (source.read() instanceof AudioRead.Samples samples) {
                meter.hear(samples.block());
            }
            return meter.reading();
        }
    }

    private static LoudnessReading measured(int rate, double weight, float[] samples) {
        LoudnessMeter meter = new LoudnessMeter(rate, weight);
        meter.hear(new float[][] {samples});
        return meter.reading();
    }

    /** Tones of 1 kHz, as "number: seconds level, seconds level". */
    private static float[] signal(String text) {
        String[] parts = text.replaceFirst(".*:", "").split(",", -1);
        float[][] tones = new float[parts.length][];
        for (int i = 0; i < parts.length; i++) {
            String[] numbers = parts[i].strip().split(" ", -1);
            tones[i] = Tones.sine(1_000, Double.parseDouble(numbers[1]), RATE, Double.parseDouble(numbers[0]));
        }
        return Tones.joined(tones);
    }

    private static float[][] both(float[] channel) {
        return new float[][] {channel, channel};
    }

    private static LoudnessMeter stereo(float[] channel) {
        LoudnessMeter meter = new LoudnessMeter(RATE, 1, 1);
        meter.hear(both(channel));
        return meter;
    }
}
