package org.bookholder.speech;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.Wav;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class NoiseGateTest {
    private static final int RATE = 16_000;

    private static short[] gated(short[] samples) {
        NoiseGate gate = new NoiseGate();
        List<short[]> parts = new ArrayList<>();
        FakeAudioSource.blocks(RATE, StreamTime.ZERO, samples).forEach(b -> parts.addAll(gate.pass(b)));
        parts.addAll(gate.flush());
        short[] all = new short[samples.length];
        int at = 0;
        for (short[] part : parts) {
            System.arraycopy(part, 0, all, at, part.length);
            at += part.length;
        }
        assertThat(at).as("as many samples come out as went in").isEqualTo(samples.length);
        return all;
    }

    private static short[] room(int seconds, double size) {
        Random random = new Random(3);
        short[] samples = new short[RATE * seconds];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (short) Math.round(random.nextGaussian() * size);
        }
        return samples;
    }

    @Test
    void aSteadyRoomBecomesSilence() {
        short[] out = gated(room(10, 50));
        assertThat(Arrays.copyOfRange(out, RATE * 2, out.length)).containsOnly((short) 0);
    }

    @Test
    void soundPassesUnchangedWithTheMomentsBeforeAndAfterIt() {
        short[] in = room(10, 50);
        short[] tone = Wav.sine(300, 0.2, RATE, 1);
        System.arraycopy(tone, 0, in, RATE * 5, tone.length);
        short[] out = gated(in);
        int from = RATE * 5 - RATE / 10;
        int to = RATE * 6 + RATE / 4;
        assertArrayEquals(Arrays.copyOfRange(in, from, to), Arrays.copyOfRange(out, from, to));
        assertThat(Arrays.copyOfRange(out, RATE * 7, out.length)).containsOnly((short) 0);
    }

    @Test
    void anOffsetOfTheMicrophoneIsNotSound() {
        short[] in = new short[RATE * 5];
        Arrays.fill(in, (short) 3_000);
        assertThat(Arrays.copyOfRange(gated(in), RATE * 2, in.length)).containsOnly((short) 0);
    }

    @Test
    void aLoudRoomIsNeverSilenced() {
        short[] in = room(5, 2_000);
        assertArrayEquals(in, gated(in));
    }
}
