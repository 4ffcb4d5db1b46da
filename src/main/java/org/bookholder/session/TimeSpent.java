package org.bookholder.session;

import java.time.Duration;
import org.bookholder.fatigue.FatigueClocks.Doing;

/**
 * How long a session took of its presenter, whatever else was read on the day.
 *
 * @param reading reading time
 * @param onCamera time in takes, without holds
 */
public record TimeSpent(Duration reading, Duration onCamera) {
    /** None. */
    public static final TimeSpent NONE = new TimeSpent(Duration.ZERO, Duration.ZERO);

    TimeSpent plus(Duration length, Doing doing) {
        return switch (doing) {
            case READING -> new TimeSpent(reading.plus(length), onCamera.plus(length));
            case STANDING_BY -> new TimeSpent(reading, onCamera.plus(length));
            case RESTING -> this;
        };
    }
}
