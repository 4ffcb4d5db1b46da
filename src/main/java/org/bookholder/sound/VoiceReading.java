package org.bookholder.sound;

/**
 * What a voice sounds like.
 *
 * @param speech how loud it is while it speaks
 * @param peak the sample farthest from zero, in dBFS
 * @param clipped samples cut off at full scale
 * @param loudness by ITU-R BS.1770, as one channel
 */
public record VoiceReading(SpeechLevel speech, double peak, long clipped, LoudnessReading loudness) {
    /** The reading of samples; full scale is 1. */
    public static VoiceReading of(float[] samples, int rate) {
        ClippedRuns clipped = new ClippedRuns();
        double peak = 0;
        for (float sample : samples) {
            clipped.hear(sample);
            peak = Math.max(peak, Math.abs(sample));
        }
        LoudnessMeter meter = new LoudnessMeter(rate, 1);
        meter.hear(new float[][] {samples});
        return new VoiceReading(
                SpeechLevel.of(samples, rate), Decibels.ofAmplitude(peak), clipped.clipped(), meter.reading());
    }
}
