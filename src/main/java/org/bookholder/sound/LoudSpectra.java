package org.bookholder.sound;

import java.util.function.Consumer;

/** Cuts sound into frames and gives the spectrum of each that is loud enough. Confined to one thread. */
public final class LoudSpectra {
    private final double least;
    private final int step;
    private final float[] frame;
    private final PowerSpectrum spectrum;
    private final Consumer<PowerSpectrum> sink;
    private int filled;

    /**
     * Gives spectra to a sink.
     *
     * @param size samples of a frame, a power of two
     * @param step samples from one frame to the next, at least {@code size}
     * @param rate samples a second
     * @param least the mean square from which a frame is loud enough; 0 for all
     */
    public LoudSpectra(int size, int step, int rate, double least, Consumer<PowerSpectrum> sink) {
        this.least = least;
        this.step = step;
        this.sink = sink;
        frame = new float[size];
        spectrum = new PowerSpectrum(size, rate);
    }

    /** The next sample; full scale is 1. */
    public void hear(float sample) {
        if (filled < frame.length) {
            frame[filled] = sample;
        }
        if (++filled >= step) {
            filled = 0;
            measure();
        }
    }

    private void measure() {
        double power = 0;
        for (float sample : frame) {
            power += sample * sample;
        }
        if (power >= least * frame.length) {
            spectrum.take(frame);
            sink.accept(spectrum);
        }
    }
}
