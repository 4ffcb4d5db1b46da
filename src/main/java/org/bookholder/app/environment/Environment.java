package org.bookholder.app.environment;

import java.nio.file.Path;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.function.LongSupplier;
import org.bookholder.journal.SessionLocks;

/**
 * What the program is told by the machine it runs on.
 *
 * @param clock time of day
 * @param nanoTime a clock that only goes forward, in nanoseconds
 * @param zone the time zone for times of day
 * @param home the program's own folder, with the models and the demo in it
 * @param data the folder that the platform gives to programs for a user's data
 * @param settings the folder that the platform gives to programs for a user's settings
 * @param locks the session folders that this process has locked
 * @param warnings tells of problems that stop nothing
 * @param equipment what there is to listen with and to show on
 */
public record Environment(
        InstantSource clock,
        LongSupplier nanoTime,
        ZoneId zone,
        Path home,
        Path data,
        Path settings,
        SessionLocks locks,
        Warnings warnings,
        Equipment equipment) {
    private static final String MODEL = "models/vosk-model-en-us";

    /** The same at another time of day. */
    public Environment at(InstantSource time) {
        return new Environment(time, nanoTime, zone, home, data, settings, locks, warnings, equipment);
    }

    /** The same with other warnings. */
    public Environment warning(Warnings other) {
        return new Environment(clock, nanoTime, zone, home, data, settings, locks, other, equipment);
    }

    /** The day it is here. */
    public LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), zone);
    }

    /** Where sessions go unless a place is named. */
    public Path sessions() {
        return data.resolve("sessions");
    }

    /** The file in which a user sets when a break is advised. */
    public Path limits() {
        return settings.resolve("limits.txt");
    }

    /** The file in which a user sets what an exported film has to be. */
    public Path delivery() {
        return settings.resolve("delivery.txt");
    }

    /** The model that came with the program. */
    public Path model() {
        return home.resolve(MODEL);
    }

    /** The demo's scripts and recording. */
    public Path demoScripts() {
        return home.resolve("demo-scripts");
    }
}
