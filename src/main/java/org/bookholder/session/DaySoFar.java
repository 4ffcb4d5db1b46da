package org.bookholder.session;

import java.time.Instant;
import org.bookholder.fatigue.EarlierReading;

/**
 * What a presenter has read on a day, over all its sessions.
 *
 * @param until the time of day up to which it is counted; the time since then is a rest
 * @param reading what was read
 */
public record DaySoFar(Instant until, EarlierReading reading) {}
