package org.bookholder.sound;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A room's noise over frequency, and what stands out of it. Bands are thirds of an octave (IEC 61260-1); from which level on
 * something is named is our own choice.
 *
 * @param bands the level of each band, the lowest first
 * @param parts what can be named, the loudest first; empty for a quiet room
 */
public record RoomNoise(List<Band> bands, List<Part> parts) {
    /** Nothing is known of the room. */
    public static final RoomNoise UNKNOWN = new RoomNoise(List.of(), List.of());

    private static final double LOWEST_HERTZ = 31.25;
    private static final double HIGHEST_HERTZ = 16_000;

    /** Broad noise is named from this level on, in dBFS, and a tone from the other. */
    private static final double LOUD = -65;

    private static final double LOUD_TONE = -75;

    /** Low and high noise are both named if they differ by less, in dB. */
    private static final double BOTH = 3;

    private static final double LOW_FROM = 50;
    private static final double LOW_TO = 400;
    private static final double HIGH_FROM = 1000;
    private static final double HIGH_TO = 8000;
    private static final int MOST_TONES = 2;

    /**
     * A band.
     *
     * @param hertz its middle
     * @param level root mean square in dBFS
     */
    public record Band(double hertz, double level) {}

    /** What a part of the noise is likely to be. */
    public enum Kind {
        /** Mains hum with its multiples. */
        HUM,
        /** A steady tone, as of a fridge, a motor or a charger. */
        TONE,
        /** Broad low noise, as of a fan, ventilation or traffic. */
        LOW,
        /** Broad high noise, as of an amplifier. */
        HISS
    }

    /**
     * A part of the noise that stands out.
     *
     * @param kind what it is likely to be
     * @param from its lowest frequency in Hz; that of the tone or of the mains
     * @param to its highest frequency in Hz
     * @param level root mean square in dBFS
     */
    public record Part(Kind kind, double from, double to, double level) {}

    /** Copies the lists. */
    public RoomNoise {
        bands = List.copyOf(bands);
        parts = List.copyOf(parts);
    }

    /** Measures samples of at least a second in which nobody speaks; full scale is 1. */
    public static RoomNoise of(float[] samples, int rate, Optional<Hum> hum) {
        NoiseSpectrum spectrum = NoiseSpectrum.of(samples, rate);
        List<Band> bands = new ArrayList<>();
        double half = Math.pow(2, 1 / 6.0);
        for (int third = 0; ; third++) {
            double hertz = LOWEST_HERTZ * Math.pow(2, third / 3.0);
            if (hertz > HIGHEST_HERTZ + 1 || hertz * half > rate / 2.0) {
                break;
            }
            bands.add(new Band(hertz, Decibels.ofPower(spectrum.between(hertz / half, hertz * half))));
        }
        List<Part> parts = new ArrayList<>();
        hum.ifPresent(h -> parts.add(new Part(
                Kind.HUM,
                h.hertz(),
                (double) h.hertz() * h.tones().get(h.tones().size() - 1),
                h.level())));
        spectrum.tones().stream()
                .filter(tone -> tone.level() > LOUD_TONE && !isOf(hum, tone.from()))
                .limit(MOST_TONES)
                .forEach(parts::add);
        double low = Decibels.ofPower(spectrum.floorBetween(LOW_FROM, LOW_TO));
        double high = Decibels.ofPower(spectrum.floorBetween(HIGH_FROM, Math.min(HIGH_TO, rate / 2.0)));
        if (low > LOUD && low > high - BOTH) {
            parts.add(new Part(Kind.LOW, LOW_FROM, LOW_TO, low));
        }
        if (high > LOUD && high > low - BOTH) {
            parts.add(new Part(Kind.HISS, HIGH_FROM, HIGH_TO, high));
        }
        parts.sort((a, b) -> Double.compare(b.level(), a.level()));
        return new RoomNoise(bands, parts);
    }

    private static boolean isOf(Optional<Hum> hum, double hertz) {
        return hum.isPresent()
                && Math.abs(hertz
                                - Math.rint(hertz / hum.get().hertz())
                                        * hum.get().hertz())
                        < 2.5;
    }

    /** The loudest tone that is not of the mains, if there is one. */
    public Optional<Part> tone() {
        return parts.stream().filter(part -> part.kind() == Kind.TONE).findFirst();
    }
}
