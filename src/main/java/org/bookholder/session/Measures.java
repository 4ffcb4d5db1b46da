package org.bookholder.session;

import org.bookholder.fatigue.FatigueReport;
import org.bookholder.pace.PaceReading;

/**
 * Measurements of the reading and its sound.
 *
 * @param pace how fast the lesson is read
 * @param fatigue how the session compares with its limits
 * @param sound the sound of the last second
 */
public record Measures(PaceReading pace, FatigueReport fatigue, Sound sound) {}
