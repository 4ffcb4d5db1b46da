package org.bookholder.footage;

/**
 * A stretch of a film in which a take is heard without a cut.
 *
 * @param film the film's first sample of it, at {@link SoundTrack#RATE}
 * @param length how many samples
 * @param ahead how many samples later the same sound lies in the take; negative if earlier
 * @param take the take's sound
 */
public record SharedStretch(long film, long length, double ahead, SoundTrack take) {
    /** The film's first sample after it. */
    public long end() {
        return film + length;
    }

    /** Where a sample of the film lies in the take. */
    public long inTake(long sample) {
        return Math.round(sample + ahead);
    }
}
