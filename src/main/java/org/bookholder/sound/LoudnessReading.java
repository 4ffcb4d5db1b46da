package org.bookholder.sound;

/**
 * Loudness of a recording according to ITU-R BS.1770-4 and EBU Tech 3341 and 3342.
 *
 * @param integrated gated loudness of the whole, in LUFS; negative infinity if nothing reached -70
 * @param range loudness range in LU
 * @param loudestMomentary the loudest 400 ms, in LUFS; negative infinity if the recording is shorter
 * @param loudestShortTerm the loudest 3 s, in LUFS; likewise
 * @param truePeak highest point of the wave, in dBTP; -120 for digital silence
 */
public record LoudnessReading(
        double integrated, double range, double loudestMomentary, double loudestShortTerm, double truePeak) {}
