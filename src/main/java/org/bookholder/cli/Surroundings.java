package org.bookholder.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.function.LongSupplier;
import java.util.function.UnaryOperator;
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
record Surroundings(
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

    /** This machine's. */
    static Surroundings ofMachine() {
        String system = System.getProperty("os.name", "");
        Path userHome = Path.of(System.getProperty("user.home", ""));
        UnaryOperator<String> environment = name -> System.getenv().getOrDefault(name, "");
        return new Surroundings(
                Instant::now,
                System::nanoTime,
                ZoneId.systemDefault(),
                Path.of(System.getProperty("bookholder.home", "")).toAbsolutePath(),
                dataFolder(system, userHome, environment),
                settingsFolder(system, userHome, environment),
                new SessionLocks(),
                new Warnings(unheard -> {}),
                new Installed.OnThisMachine());
    }

    /** Where the platform's conventions want a user's data. */
    static Path dataFolder(String system, Path userHome, UnaryOperator<String> environment) {
        if (system.startsWith("Mac")) {
            return userHome.resolve("Library/Application Support/Bookholder");
        }
        if (system.startsWith("Windows")) {
            String local = environment.apply("LOCALAPPDATA");
            return (local.isEmpty() ? userHome.resolve("AppData/Local") : Path.of(local)).resolve("Bookholder");
        }
        return baseFolder(environment.apply("XDG_DATA_HOME"), userHome.resolve(".local/share"));
    }

    /** Where the platform's conventions want a user's settings. */
    static Path settingsFolder(String system, Path userHome, UnaryOperator<String> environment) {
        if (system.startsWith("Mac")) {
            return dataFolder(system, userHome, environment);
        }
        if (system.startsWith("Windows")) {
            String roaming = environment.apply("APPDATA");
            return (roaming.isEmpty() ? userHome.resolve("AppData/Roaming") : Path.of(roaming)).resolve("Bookholder");
        }
        return baseFolder(environment.apply("XDG_CONFIG_HOME"), userHome.resolve(".config"));
    }

    /** The XDG base directory specification wants a path that is not absolute to be ignored. */
    private static Path baseFolder(String given, Path otherwise) {
        return (given.isEmpty() || !Path.of(given).isAbsolute() ? otherwise : Path.of(given)).resolve("bookholder");
    }

    /** The same at another time of day. */
    Surroundings at(InstantSource time) {
        return new Surroundings(time, nanoTime, zone, home, data, settings, locks, warnings, equipment);
    }

    /** The same with other warnings. */
    Surroundings warning(Warnings other) {
        return new Surroundings(clock, nanoTime, zone, home, data, settings, locks, other, equipment);
    }

    /** The day it is here. */
    LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), zone);
    }

    /** Where sessions go unless a place is named. */
    Path sessions() {
        return data.resolve("sessions");
    }

    /** The file in which a user sets when a break is advised. */
    Path limits() {
        return settings.resolve("limits.txt");
    }

    /** The file in which a user sets what an exported film has to be. */
    Path delivery() {
        return settings.resolve("delivery.txt");
    }

    /** The model that came with the program. */
    Path model() {
        return home.resolve(MODEL);
    }

    /** The demo's scripts and recording. */
    Path demoScripts() {
        return home.resolve("demo-scripts");
    }
}
