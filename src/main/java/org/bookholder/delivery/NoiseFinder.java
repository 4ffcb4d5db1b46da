package org.bookholder.delivery;

import java.util.Arrays;
import java.util.Locale;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.sound.Decibels;
import org.bookholder.sound.LoudSpectra;
import org.bookholder.sound.PowerSpectrum;

/**
 * Finds steady noise that is too loud beside the voice, and hum of the mains. Noise is what is heard in the pauses: the
 * softest hundredth of the film, digital silence left out. It is steady if the softest twentieth is hardly louder; where the pauses
 * were cut out, or music plays, it is louder by far. Hum is a tone at a multiple of the mains frequency that stands out of what lies
 * beside it while the voice rests. The limits are our own, within common practice. Confined to one thread.
 */
final class NoiseFinder {
    /** The findings' kind. It is always looked for. */
    static final String KIND = "noise";

    /** The loud tenth of the voice is louder than the pauses by this much, in dB. */
    private static final double LEAST_RATIO = 22;

    /** The softest twentieth is louder than the softest hundredth by less, in dB; in speech without pauses by 3.9 and more. */
    private static final double STEADY = 2;

    /** A tone or noise alone, without a voice, differs by less, in dB. */
    private static final double NO_VOICE = 2;

    /** The voice is louder than the hum by this much, in dB; the sound check before a session calls less poor. */
    private static final double LEAST_TO_HUM = 40;

    private static final int LEVELS_PER_SECOND = 20;
    private static final int FEWEST = 10 * LEVELS_PER_SECOND;
    private static final double SILENT = Decibels.power(-85);
    private static final int SIZE = 65_536;
    private static final int FEWEST_SPECTRA = 8;
    private static final int MULTIPLES = 6;
    private static final double STANDING_OUT = 10;

    private final Findings findings;
    private final int rate;
    private final LoudSpectra frames;
    private double sum;
    private int inLevel;
    private double[] levels = new double[4096];
    private int count;
    private double[][] tones = new double[4096][];
    private int spectra;

    NoiseFinder(int rate, Findings findings) {
        this.rate = rate;
        this.findings = findings;
        frames = new LoudSpectra(SIZE, SIZE, rate, 0, this::measure);
    }

    /** The next sample; full scale is 1. */
    void hear(float sample) {
        sum += sample * sample;
        if (++inLevel >= rate / LEVELS_PER_SECOND) {
            if (sum > SILENT * inLevel) {
                levels = count == levels.length ? Arrays.copyOf(levels, 2 * count) : levels;
                levels[count++] = sum / inLevel;
            }
            sum = 0;
            inLevel = 0;
        }
        frames.hear(sample);
    }

    private void measure(PowerSpectrum spectrum) {
        tones = spectra == tones.length ? Arrays.copyOf(tones, 2 * spectra) : tones;
        tones[spectra++] = measured(spectrum);
    }

    /** For each mains frequency and multiple the mean square of the tone, and that of as wide a band beside it. */
    private static double[] measured(PowerSpectrum spectrum) {
        double[] measured = new double[4 * MULTIPLES];
        for (int i = 0; i < 2 * MULTIPLES; i++) {
            double hertz = hertz(i);
            // A Hann window spreads a sine of mean square p over a power of 3/16 p times the square of the size.
            double unit = 0.1875 * SIZE * SIZE;
            measured[2 * i] = spectrum.between(hertz - 1.5, hertz + 2) / unit;
            measured[2 * i + 1] =
                    (spectrum.between(hertz - 8, hertz - 4.5) + spectrum.between(hertz + 4.5, hertz + 8)) / (2 * unit);
        }
        return measured;
    }

    private static double hertz(int tone) {
        return (tone < MULTIPLES ? 50 : 60) * (tone % MULTIPLES + 1.0);
    }

    /** The sound ends. */
    void end() {
        if (count < FEWEST) {
            return;
        }
        double[] sorted = Arrays.copyOf(levels, count);
        Arrays.sort(sorted);
        double voice = Decibels.ofPower(sorted[count * 9 / 10]);
        double pauses = Decibels.ofPower(sorted[count / 100]);
        boolean steady = Decibels.ofPower(sorted[count / 20]) - pauses < STEADY;
        if (steady && voice - pauses < LEAST_RATIO && voice - pauses > NO_VOICE) {
            findings.add(Finding.ofAll(
                    Grade.LOOK,
                    KIND,
                    String.format(Locale.ROOT, "the pauses are only %.0f dB softer than the voice", voice - pauses),
                    "listen for hiss or a fan under the voice; lower it, or record closer to the microphone"));
        }
        hum(voice);
    }

    private void hum(double voice) {
        if (spectra < FEWEST_SPECTRA) {
            return;
        }
        for (int mains = 0; mains < 2; mains++) {
            double power = 0;
            boolean low = false;
            for (int multiple = 0; multiple < MULTIPLES; multiple++) {
                int tone = mains * MULTIPLES + multiple;
                double there = lowest(2 * tone);
                if (there > STANDING_OUT * lowest(2 * tone + 1)) {
                    power += there;
                    low |= multiple < 2;
                }
            }
            double ratio = voice - Decibels.ofPower(power);
            if (low && ratio < LEAST_TO_HUM) {
                findings.add(Finding.ofAll(
                        Grade.LOOK,
                        KIND,
                        String.format(
                                Locale.ROOT,
                                "hum of %d Hz, %.0f dB softer than the voice",
                                mains == 0 ? 50 : 60,
                                ratio),
                        "take the hum out with a filter; before the next recording run the sound check"));
            }
        }
    }

    /** The size of a measure while the voice rests: that of the softest quarter of the spectra. */
    private double lowest(int measure) {
        return Arrays.stream(tones, 0, spectra)
                .mapToDouble(spectrumTones -> spectrumTones[measure])
                .sorted()
                .skip(spectra / 4)
                .findFirst()
                .orElse(0);
    }
}
