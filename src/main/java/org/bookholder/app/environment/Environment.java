package org.bookholder.app.environment;

import java.nio.file.Path;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.function.LongSupplier;
import org.bookholder.files.SideBySide;
import org.bookholder.journal.SessionLocks;

/**
 * What the program knows about the machine it runs on.
 *
 * @param clock time of day
 * @param nanoTime monotonic clock in nanoseconds
 * @param zone the time zone for times of day
 * @param home the program's own folder, with the models and the demo
 * @param data the platform's folder for a user's data
 * @param settings the platform's folder for a user's settings
 * @param locks the session folders that this process has locked
 * @param warnings reports problems that do not stop the work
 * @param sideBySide reads many files or folders
 * @param equipment the devices and parts installed
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
        SideBySide sideBySide,
        Equipment equipment) {
    private static final String MODEL = "models/vosk-model-en-us";

    /** The same with another clock. */
    public Environment at(InstantSource time) {
        return new Environment(time, nanoTime, zone, home, data, settings, locks, warnings, sideBySide, equipment);
    }

    /** The same with other warnings. */
    public Environment warning(Warnings other) {
        return new Environment(clock, nanoTime, zone, home, data, settings, locks, other, sideBySide, equipment);
    }

    /** The same with other equipment. */
    public Environment with(Equipment other) {
        return new Environment(clock, nanoTime, zone, home, data, settings, locks, warnings, sideBySide, other);
    }

    /** Today's date in the time zone. */
    public LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), zone);
    }

    /** Default folder of sessions. */
    public Path sessions() {
        return data.resolve("sessions");
    }

    /** The user's file of break limits. */
    public Path limits() {
        return settings.resolve("limits.txt");
    }

    /** The user's delivery profile. */
    public Path delivery() {
        return settings.resolve("delivery.txt");
    }

    /** The speech model shipped with the program. */
    public Path model() {
        return home.resolve(MODEL);
    }

    /** The folder with the demo's scripts and recording. */
    public Path demoScripts() {
        return home.resolve("demo-scripts");
    }

    /** Whether a file is one of the demo's. */
    public boolean isOfDemo(Path file) {
        return file.toAbsolutePath()
                .normalize()
                .startsWith(demoScripts().toAbsolutePath().normalize());
    }
}
