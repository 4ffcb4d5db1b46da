package org.bookholder.footage;

import java.util.ArrayList;
import java.util.List;

/**
 * How loud a file's channels are, and how alike, tenth of a second by tenth of a second: enough to tell the level of any of them and of any
 * sum of them without going through the sound again. What lies below a voice is left out. Confined to one thread.
 */
public final class ChannelPowers {
    /** Samples a frame: a tenth of a second. */
    public static final int FRAME = SoundTrack.RATE / 10;

    /** Of a file with more channels only so many are told apart. */
    public static final int MOST = 16;

    /** A high-pass of 100 Hz at {@link SoundTrack#RATE}: what lies below a voice is hum, rumble and offset. */
    private static final double KEPT = Math.exp(-2 * Math.PI * 100 / SoundTrack.RATE);

    private static final double FULL_SCALE = 32_768;

    private final int width;
    private final int channels;
    private final double[] before;
    private final double[] high;
    private final double[] sums;
    private final List<float[]> frames = new ArrayList<>();
    private int inFrame;

    /** Begins for sound of so many channels. */
    public ChannelPowers(int width) {
        this.width = width;
        channels = Math.min(width, MOST);
        before = new double[channels];
        high = new double[channels];
        sums = new double[channels * (channels + 1) / 2];
    }

    /** Those of a track of one channel. */
    public static ChannelPowers of(SoundTrack track) {
        ChannelPowers powers = new ChannelPowers(1);
        short[] piece = new short[FRAME];
        for (long at = 0; at + FRAME <= track.length(); at += FRAME) {
            float[] samples = track.read(at, FRAME);
            for (int i = 0; i < FRAME; i++) {
                piece[i] = (short) (samples[i] * FULL_SCALE);
            }
            powers.add(piece);
        }
        return powers;
    }

    /** How many channels are told apart. */
    public int channels() {
        return channels;
    }

    /** How many tenths of a second were gone through. */
    public int frames() {
        return frames.size();
    }

    /** Goes through samples of {@link SoundTrack#RATE} a second, channel by channel within each. */
    public void add(short[] interleaved) {
        for (int at = 0; at + width <= interleaved.length; at += width) {
            int place = 0;
            for (int a = 0; a < channels; a++) {
                double sample = interleaved[at + a] / FULL_SCALE;
                high[a] = KEPT * (high[a] + sample - before[a]);
                before[a] = sample;
                for (int b = 0; b <= a; b++) {
                    sums[place++] += high[a] * high[b];
                }
            }
            if (++inFrame == FRAME) {
                float[] frame = new float[sums.length];
                for (int i = 0; i < sums.length; i++) {
                    frame[i] = (float) (sums[i] / FRAME);
                    sums[i] = 0;
                }
                frames.add(frame);
                inFrame = 0;
            }
        }
    }

    /** The power of some channels in one frame, against full scale. */
    public double power(Channels heard, int frame) {
        float[] pairs = frames.get(frame);
        if (heard.first() > 0) {
            int a = Math.min(heard.first(), channels) - 1;
            double first = pairs[place(a, a)];
            if (!heard.pair()) {
                return first;
            }
            int b = Math.min(heard.second(), channels) - 1;
            double both = 2.0 * pairs[place(Math.max(a, b), Math.min(a, b))];
            return Math.max(0, (first + pairs[place(b, b)] + (heard.inverted() ? -both : both)) / 4);
        }
        double power = 0;
        for (int a = 0; a < channels; a++) {
            for (int b = 0; b <= a; b++) {
                power += (a == b ? 1 : 2) * pairs[place(a, b)];
            }
        }
        return Math.max(0, power / channels / channels);
    }

    private static int place(int a, int b) {
        return a * (a + 1) / 2 + b;
    }
}
