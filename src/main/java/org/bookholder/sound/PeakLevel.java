package org.bookholder.sound;

import org.bookholder.sound.SoundFinding.Grade;

/**
 * The one rule for the level of speech, by its highest peak over some seconds. The sound check, the reading window and the desk
 * all ask it, so that none calls good what another calls poor. Oral history archives advise peaks between -12 and -6 dBFS (Boyd,
 * Oral History Association); the outer limits are common practice.
 */
public enum PeakLevel {
    /** Nothing comes in. */
    NONE(Grade.POOR),
    /** Too low to record. */
    TOO_LOW(Grade.POOR),
    /** Lower than it should be. */
    LOW(Grade.FAIR),
    /** As it should be. */
    RIGHT(Grade.GOOD),
    /** Higher than it should be. */
    HIGH(Grade.FAIR),
    /** Too high: the next loud word will be cut off. */
    TOO_HIGH(Grade.POOR);

    /** The lower end of what peaks of speech should be, in dBFS. */
    public static final double LOWEST = -12;

    /** The upper end of what peaks of speech should be, in dBFS. */
    public static final double HIGHEST = -6;

    private static final double TOO_LOUD = -1;
    private static final double TOO_SOFT = -24;
    private static final double SILENT = -90;

    private final Grade grade;

    PeakLevel(Grade grade) {
        this.grade = grade;
    }

    /** How good it is. */
    public Grade grade() {
        return grade;
    }

    /** What is said of a highest peak of speech in dBFS. */
    public static PeakLevel of(double peak) {
        if (peak <= SILENT) {
            return NONE;
        }
        if (peak < LOWEST) {
            return peak < TOO_SOFT ? TOO_LOW : LOW;
        }
        if (peak > HIGHEST) {
            return peak > TOO_LOUD ? TOO_HIGH : HIGH;
        }
        return RIGHT;
    }
}
