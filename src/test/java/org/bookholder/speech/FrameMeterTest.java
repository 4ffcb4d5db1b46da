package org.bookholder.speech;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.bookholder.testing.Wav;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class FrameMeterTest {
    private final FrameMeter meter = new FrameMeter();

    @Test
    void measuresASquareWaveAtFullScaleAsZero() {
        short[] wave = new short[160];
        for (int i = 0; i < wave.length; i++) {
            wave[i] = i % 2 == 0 ? Short.MAX_VALUE : Short.MIN_VALUE;
        }
        assertThat(decibels(16_000, 0, wave)).containsExactly((byte) 0);
    }

    @Test
    void anOffsetOfTheMicrophoneIsNotSound() {
        short[] offset = new short[320];
        Arrays.fill(offset, (short) 5000);
        assertThat(decibels(16_000, 0, offset)).containsExactly(FrameLevels.SILENCE, FrameLevels.SILENCE);
    }

    /** A loud hum, and a soft tone of a voice's pitch and more over it. */
    @Test
    void aHumIsNotHeardInTheVoiceBand() {
        FrameMeter voice = FrameMeter.voiceBand();
        short[] hum = Wav.sine(50, 0.3, 16_000, 1);
        short[] both = hum.clone();
        short[] tone = Wav.sine(1_000, 0.01, 16_000, 1);
        for (int i = 0; i < both.length; i++) {
            both[i] += tone[i];
        }
        assertThat(level(voice.hear(block(16_000, 0, hum)))).isBetween(-65.0, -55.0);
        assertThat(level(FrameMeter.voiceBand().hear(block(16_000, 0, both)))).isBetween(-44.0, -42.0);
        assertThat(level(meter.hear(block(16_000, 0, both)))).isBetween(-22.0, -20.0);
    }

    @Test
    void theVoiceBandBeginsAfreshAfterAGap() {
        FrameMeter voice = FrameMeter.voiceBand();
        short[] offset = new short[1_600];
        Arrays.fill(offset, (short) 5_000);
        voice.hear(block(16_000, 0, new short[1_600]));
        assertThat(voice.hear(block(16_000, 5, offset)).orElseThrow().decibels())
                .containsOnly(FrameLevels.SILENCE);
    }

    @Test
    void handlesBlocksShorterThanAFrame() {
        assertThat(meter.hear(block(16_000, 1, new short[100]))).isEmpty();
        Optional<FrameLevels> levels = meter.hear(new AudioBlock(
                StreamTime.ofSeconds(1).plus(StreamTime.ofSamples(100, 16_000)), 16_000, new short[100]));
        assertThat(levels).hasValueSatisfying(l -> {
            assertThat(l.start()).isEqualTo(StreamTime.ofSeconds(1));
            assertThat(l.decibels()).hasSize(1);
        });
    }

    @Test
    void doesNotDriftAtRatesThatHaveNoWholeFrames() {
        int frames = 0;
        StreamTime end = StreamTime.ZERO;
        for (int second = 0; second < 60; second++) {
            List<FrameLevels> levels = meter.hear(block(11_025, second, new short[11_025])).stream()
                    .toList();
            frames += levels.stream().mapToInt(l -> l.decibels().length).sum();
            end = levels.get(levels.size() - 1).end();
        }
        assertThat(frames).isEqualTo(6_000);
        assertThat(end).isEqualTo(StreamTime.ofSeconds(60));
    }

    @Test
    void startsAgainAfterAGap() {
        meter.hear(block(16_000, 0, new short[1_600]));
        assertThat(meter.hear(block(16_000, 5, new short[1_600])).map(FrameLevels::start))
                .hasValue(StreamTime.ofSeconds(5));
    }

    /** The mean of the frames after the first tenth of a second, in dBFS. */
    private static double level(Optional<FrameLevels> levels) {
        byte[] frames = levels.orElseThrow().decibels();
        double sum = 0;
        for (int i = 10; i < frames.length; i++) {
            sum += frames[i];
        }
        return sum / (frames.length - 10);
    }

    private byte[] decibels(int rate, double start, short[] samples) {
        return meter.hear(block(rate, start, samples)).orElseThrow().decibels();
    }

    private static AudioBlock block(int rate, double start, short[] samples) {
        return new AudioBlock(StreamTime.ofSeconds(start), rate, samples);
    }
}
