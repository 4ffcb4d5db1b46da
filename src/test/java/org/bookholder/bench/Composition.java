package org.bookholder.bench;

import java.util.Random;

/** A script, the sound of a reading of it, and what happens in that reading. */
final class Composition {
    private final String name;
    private final String script;
    private final short[] sound;
    private final double speechRms;
    private final Truth truth;
    private final long seed;

    /**
     * Joins the parts.
     *
     * @param name for people
     * @param script in the form of a script file
     * @param sound at {@link Sound#RATE}; not copied
     * @param speechRms root mean square of the parts where somebody speaks
     * @param truth what happens
     * @param seed seed of all random choices
     */
    Composition(String name, String script, short[] sound, double speechRms, Truth truth, long seed) {
        this.name = name;
        this.script = script;
        this.sound = sound;
        this.speechRms = speechRms;
        this.truth = truth;
        this.seed = seed;
    }

    /** The same reading in a noisy room; see {@link Noise#over}. */
    Composition inPinkNoise(double decibels) {
        return with(Noise.pink(sound.length, new Random(seed)), decibels, "in noise");
    }

    /** The same reading beside a fan; see {@link Noise#low}. */
    Composition besideAFan(double decibels) {
        return with(Noise.low(sound.length, new Random(seed)), decibels, "beside a fan");
    }

    /** The same reading with a noise, as long as its sound, {@code decibels} below the voice. */
    Composition with(double[] noise, double decibels, String where) {
        short[] noisy = Noise.over(sound, speechRms, decibels, noise);
        return new Composition(name + " " + where, script, noisy, speechRms, truth, seed);
    }

    String name() {
        return name;
    }

    String script() {
        return script;
    }

    short[] sound() {
        return sound;
    }

    Truth truth() {
        return truth;
    }

    long seed() {
        return seed;
    }
}
