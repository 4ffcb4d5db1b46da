package org.bookholder.footage;

import java.util.Random;

/**
 * Speech for hours made of a minute and a half of it, no stretch of which comes twice: pieces from anywhere in it, each at a
 * speed, through a filter and with a noise of its own. Nobody could say what is being said; to a correlation it is a voice.
 */
public final class LongVoice {
    private static final double NOISE = 0.003;

    private final float[] voice;
    private final int rate;
    private final Random random;

    /** The same seed gives the same voice. */
    public LongVoice(float[] voice, int rate, long seed) {
        this.voice = voice;
        this.rate = rate;
        this.random = new Random(seed);
    }

    /** What comes next, some seconds of it. */
    public float[] next() {
        double speed = 0.8 + 0.5 * random.nextDouble();
        int length = (int) ((3 + 9 * random.nextDouble()) * rate);
        int from = random.nextInt(Math.max(1, (int) (voice.length - speed * length - 2)));
        double near = 0.8 * random.nextGaussian();
        double gain = 0.4 + 0.4 * random.nextDouble();
        float[] piece = new float[length];
        double before = 0;
        for (int i = 0; i < length; i++) {
            double at = from + speed * i;
            int left = (int) at;
            double sample = voice[left] + (at - left) * (voice[left + 1] - voice[left]);
            piece[i] = (float) (gain * (sample + near * before) + NOISE * random.nextGaussian());
            before = sample;
        }
        return piece;
    }
}
