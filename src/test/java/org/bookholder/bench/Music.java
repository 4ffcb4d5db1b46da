package org.bookholder.bench;

import java.util.Random;

/** Imitates music, to see what the recognisers make of it: a tune over broken chords, each note with overtones. */
final class Music {
    private static final double NOTE_SECONDS = 0.25;
    private static final int OVERTONES = 6;
    private static final int[][] CHORDS = {{0, 4, 7}, {9, 12, 16}, {5, 9, 12}, {7, 11, 14}};
    private static final int NOTES_A_CHORD = 8;

    /** Keeps the sum of all notes that sound together, each up to 2.5, below full scale. */
    private static final double QUIET = 1_500;

    private Music() {}

    /** Music, levelled as a reading is. */
    static short[] play(double seconds, Random random) {
        double[] sound = new double[(int) (seconds * Sound.RATE)];
        int note = (int) (NOTE_SECONDS * Sound.RATE);
        for (int i = 0; i * note < sound.length; i++) {
            int[] chord = CHORDS[i / NOTES_A_CHORD % CHORDS.length];
            add(sound, i * note, 3 * note, 48 + chord[i % chord.length]);
            add(sound, i * note, 2 * note, 60 + chord[random.nextInt(chord.length)]);
        }
        return Sound.levelled(Sound.mixed(new short[sound.length], sound, QUIET));
    }

    /** Adds a plucked note; {@code key} counts semitones as MIDI does, 69 being 440 Hz. */
    private static void add(double[] sound, int start, int length, int key) {
        double hertz = 440 * Math.pow(2, (key - 69) / 12.0);
        for (int i = 0; i < length && start + i < sound.length; i++) {
            double time = (double) i / Sound.RATE;
            double value = 0;
            for (int overtone = 1; overtone <= OVERTONES; overtone++) {
                value += Math.sin(2 * Math.PI * hertz * overtone * time) / overtone;
            }
            sound[start + i] += value * Math.exp(-4 * time);
        }
    }
}
