package org.bookholder.speech;

/**
 * Lets through what a voice is told by and holds back the low noise of a room: hum, rumble, a fan. Confined to one thread.
 *
 * <p>A high-pass of fourth order after Butterworth: two filters of second order, whose qualities follow from the places of
 * its poles (A. V. Oppenheim, R. W. Schafer, Discrete-Time Signal Processing, appendix on Butterworth filters). It takes 24
 * dB from what lies an octave below its corner, and nothing from consonants.
 */
public final class VoiceBand {
    /** The corner: above the pitch of most voices and below the first formant of most vowels, which tell a voice too. */
    private static final double HERTZ = 200;

    private static final double FIRST_QUALITY = 1 / (2 * Math.cos(Math.PI / 8));
    private static final double SECOND_QUALITY = 1 / (2 * Math.cos(3 * Math.PI / 8));

    private final Biquad first;
    private final Biquad second;
    private double origin;
    private boolean begun;

    /** A filter for sound of so many samples in one second, at least 8,000. */
    public VoiceBand(int rate) {
        first = Biquad.highPass(HERTZ, FIRST_QUALITY, rate);
        second = Biquad.highPass(HERTZ, SECOND_QUALITY, rate);
    }

    /** The next sample, filtered. What was before the first one counts as steady, so that an offset makes no click. */
    public double pass(double sample) {
        origin = begun ? origin : sample;
        begun = true;
        return second.pass(first.pass(sample - origin));
    }
}
