package org.bookholder.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.bookholder.sound.SpeechLevel;

/** Faults of a film's sound that are planted in a voice of 48 kHz. */
enum SoundFault {
    NONE("") {
        @Override
        Planted plant(float[] voice, Random random) {
            return new Planted(List.of(voice), 0, List.of());
        }
    },
    /** No fault: a limiter holds the peaks down by 8 dB. */
    LIMITED("") {
        @Override
        Planted plant(float[] voice, Random random) {
            float[] held = voice.clone();
            int ahead = PlantedFaults.RATE / 200;
            double least = 0.2;
            double gain = 1;
            for (int i = 0; i < held.length; i++) {
                double highest = 0;
                for (int j = i; j < Math.min(held.length, i + ahead); j += 4) {
                    highest = Math.max(highest, Math.abs(voice[j]));
                }
                double wanted = Math.min(1, least / Math.max(least, highest));
                gain += (wanted - gain) * (wanted < gain ? 4.0 / ahead : 0.1 / ahead);
                held[i] = (float) (2 * gain * voice[i]);
            }
            return new Planted(List.of(held), 0, List.of());
        }
    },
    DROPOUT_5("drop-out") {
        @Override
        Planted plant(float[] voice, Random random) {
            return holes(voice, random, 0.005, 0);
        }
    },
    DROPOUT_12("drop-out") {
        @Override
        Planted plant(float[] voice, Random random) {
            return holes(voice, random, 0.012, 0.0003);
        }
    },
    DROPOUT_40("drop-out") {
        @Override
        Planted plant(float[] voice, Random random) {
            return holes(voice, random, 0.04, 0);
        }
    },
    CLIPPED_6_LOWERED_3("clipped") {
        @Override
        Planted plant(float[] voice, Random random) {
            return cutOff(voice, 6, -3);
        }
    },
    CLIPPED_3_LOWERED_10("clipped") {
        @Override
        Planted plant(float[] voice, Random random) {
            return cutOff(voice, 3, -10);
        }
    },
    CLIPPED_12_LOWERED_20("clipped") {
        @Override
        Planted plant(float[] voice, Random random) {
            return cutOff(voice, 12, -20);
        }
    },
    ECHO_30_MS("echo") {
        @Override
        Planted plant(float[] voice, Random random) {
            return echo(voice, 0.03, 0.4f);
        }
    },
    ECHO_90_MS("echo") {
        @Override
        Planted plant(float[] voice, Random random) {
            return echo(voice, 0.09, 0.3f);
        }
    },
    HISS_15_DB_BELOW("noise") {
        @Override
        Planted plant(float[] voice, Random random) {
            float[] noisy = voice.clone();
            for (int i = 0; i < noisy.length; i++) {
                noisy[i] += (float) (0.1 * 0.178 * random.nextGaussian());
            }
            return new Planted(List.of(noisy), 1, List.of());
        }
    },
    HUM_30_DB_BELOW("noise") {
        @Override
        Planted plant(float[] voice, Random random) {
            float[] humming = voice.clone();
            for (int i = 0; i < humming.length; i++) {
                double turn = 2 * Math.PI * 50 * i / PlantedFaults.RATE;
                humming[i] += (float)
                        (0.1 * 0.0316 * (Math.sin(turn) + Math.sin(2 * turn) + 0.5 * Math.sin(3 * turn)) / 1.06);
            }
            return new Planted(List.of(humming), 1, List.of());
        }
    },
    ONE_EAR("stereo") {
        @Override
        Planted plant(float[] voice, Random random) {
            return new Planted(List.of(voice, new float[voice.length]), 1, List.of());
        }
    },
    INVERTED("stereo") {
        @Override
        Planted plant(float[] voice, Random random) {
            float[] right = voice.clone();
            for (int i = 0; i < right.length; i++) {
                right[i] = -right[i];
            }
            return new Planted(List.of(voice, right), 1, List.of());
        }
    };

    /** How many faults with a place of their own are planted in a voice. */
    private static final int PLACES = 20;

    private final String kind;

    SoundFault(String kind) {
        this.kind = kind;
    }

    /**
     * A sound with faults.
     *
     * @param channels its samples
     * @param count how many faults
     * @param at where, in seconds; empty if the fault is everywhere
     */
    record Planted(List<float[]> channels, int count, List<Double> at) {}

    abstract Planted plant(float[] voice, Random random);

    /** The kind under which it is to be found. */
    Optional<String> kind() {
        return kind.isEmpty() ? Optional.empty() : Optional.of(kind);
    }

    static float gainTo(float[] voice, double level, double peak) {
        double highest = 0;
        for (float sample : voice) {
            highest = Math.max(highest, Math.abs(sample));
        }
        double gain = level - SpeechLevel.of(voice, PlantedFaults.RATE).level();
        double most = peak - 20 * Math.log10(highest);
        return (float) Math.pow(10, Math.min(gain, most) / 20);
    }

    /** Places in loud sound on both sides, a quarter of a second apart. */
    static List<Integer> places(float[] voice, Random random, int length) {
        List<Integer> places = new ArrayList<>();
        for (int tried = 0; places.size() < PLACES && tried < 1_000_000; tried++) {
            int at = 24_000 + random.nextInt(voice.length - 48_000);
            if (loud(voice, at - 240)
                    && loud(voice, at + length)
                    && places.stream().noneMatch(p -> Math.abs(p - at) < 12_000)) {
                places.add(at);
            }
        }
        return places;
    }

    /** Whether 5 ms are louder than -35 dBFS. */
    private static boolean loud(float[] voice, int from) {
        double sum = 0;
        for (int i = from; i < from + 240; i++) {
            sum += voice[i] * voice[i];
        }
        return sum > 240 * 3.2e-4;
    }

    private static Planted holes(float[] voice, Random random, double seconds, double noise) {
        float[] holed = voice.clone();
        int length = (int) (seconds * PlantedFaults.RATE);
        List<Integer> places = places(voice, random, length);
        for (int at : places) {
            for (int i = at; i < at + length; i++) {
                holed[i] = (float) (noise * random.nextGaussian());
            }
        }
        return new Planted(
                List.of(holed),
                places.size(),
                places.stream()
                        .map(p -> (p + length / 2.0) / PlantedFaults.RATE)
                        .toList());
    }

    /** Raised until so many dB of its peaks are lost, cut off, and lowered again. */
    private static Planted cutOff(float[] voice, double over, double lowered) {
        float[] cut = voice.clone();
        double[] heights = new double[cut.length];
        for (int i = 0; i < cut.length; i++) {
            heights[i] = Math.abs(cut[i]);
        }
        Arrays.sort(heights);
        double limit = heights[(int) (0.9999 * heights.length)] * Math.pow(10, -over / 20);
        double gain = Math.pow(10, lowered / 20) / limit;
        for (int i = 0; i < cut.length; i++) {
            cut[i] = (float) (gain * Math.max(-limit, Math.min(limit, cut[i])));
        }
        return new Planted(List.of(cut), 1, List.of());
    }

    private static Planted echo(float[] voice, double seconds, float part) {
        float[] doubled = voice.clone();
        int late = (int) (seconds * PlantedFaults.RATE);
        for (int i = late; i < doubled.length; i++) {
            doubled[i] += part * voice[i - late];
        }
        return new Planted(List.of(doubled), 1, List.of());
    }
}
