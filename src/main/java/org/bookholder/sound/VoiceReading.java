package org.bookholder.sound;

/**
 * Measurements of a voice.
 *
 * @param speech its level while the person speaks
 * @param peak the sample farthest from zero, in dBFS
 * @param clipped number of samples clipped at full scale
 * @param loudness loudness according to ITU-R BS.1770, measured as one channel
 */
public record VoiceReading(SpeechLevel speech, double peak, long clipped, LoudnessReading loudness) {
    /** Measures samples; full scale is 1. */
    public static VoiceReading of(float[] samples, int rate) {
        double peak = 0;
        for (float sample : samples) {
            peak = Math.max(peak, Math.abs(sample));
        }
        LoudnessMeter meter = new LoudnessMeter(rate, 1);
        meter.hear(new float[][] {samples});
        return new VoiceReading(
                SpeechLevel.of(samples, rate), Decibels.ofAmplitude(peak), ClippedRuns.in(samples), meter.reading());
    }

    /** The same with so many clipped samples. */
    VoiceReading withClipped(long samples) {
        return new VoiceReading(speech, peak, samples, loudness);
    }
}
