package org.bookholder.cli;

import java.nio.file.Path;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.wav.WavSource;
import org.bookholder.testing.Wav;

/** The beginning of the demo's recorded reading, to be written in whatever form a test needs. */
final class DemoVoice {
    private static final int RATE = 16_000;

    /** Where the first line's pause is, in seconds. */
    private static final double FIRST_LINE = 3.3;

    private final short[] samples;

    private DemoVoice(short[] samples) {
        this.samples = samples;
    }

    /** "Hello, and welcome to the workshop.", as in the first line of the demo's first lesson. */
    static DemoVoice firstLine() throws ProblemException {
        Path recording = Path.of(System.getProperty("bookholder.home"), "demo-scripts/lesson-1.wav");
        short[] voice = new short[(int) (FIRST_LINE * RATE)];
        int length = 0;
        try (WavSource source = WavSource.open(recording)) {
            while (length < voice.length && source.read() instanceof AudioRead.Samples read) {
                short[] block = read.block().samples();
                int more = Math.min(block.length, voice.length - length);
                System.arraycopy(block, 0, voice, length, more);
                length += more;
            }
        }
        return new DemoVoice(voice);
    }

    /** The same at another rate, by linear interpolation: crude, and good enough for a recogniser. */
    short[] at(int rate) {
        short[] out = new short[(int) ((long) (samples.length - 1) * rate / RATE)];
        for (int i = 0; i < out.length; i++) {
            double at = (double) i * RATE / rate;
            int left = Math.min((int) at, samples.length - 2);
            out[i] = (short) Math.round(samples[left] + (samples[left + 1] - samples[left]) * (at - left));
        }
        return out;
    }

    /** Writes it as it is. */
    Path write(Path file) {
        return Wav.write(file, RATE, samples);
    }
}
