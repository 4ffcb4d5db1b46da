package org.bookholder.session;

import org.bookholder.fatigue.FatigueReport;
import org.bookholder.pace.PaceReading;

/**
 * What is measured of the reading and of its sound.
 *
 * @param pace how fast it is read
 * @param fatigue where the session stands against its limits
 * @param sound the sound of the last second
 */
public record Measures(PaceReading pace, FatigueReport fatigue, Sound sound) {}
