package org.bookholder.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.function.LongSupplier;
import java.util.function.UnaryOperator;

/**
 * What the program is told by the machine it runs on.
 *
 * @param clock time of day
 * @param nanoTime a clock that only goes forward, in nanoseconds
 * @param zone the time zone for times of day
 * @param home the program's own folder, with the models and the demo in it
 * @param data the folder that the platform gives to programs for a user's data
 * @param equipment what there is to listen with and to show on
 */
record Surroundings(
        InstantSource clock, LongSupplier nanoTime, ZoneId zone, Path home, Path data, Equipment equipment) {
    private static final String MODEL = "models/vosk-model-en-us";

    /** This machine's. */
    static Surroundings ofMachine() {
        return new Surroundings(
                Instant::now,
                System::nanoTime,
                ZoneId.systemDefault(),
                Path.of(System.getProperty("bookholder.home", "")).toAbsolutePath(),
                dataFolder(
                        System.getProperty("os.name", ""),
                        Path.of(System.getProperty("user.home", "")),
                        name -> System.getenv().getOrDefault(name, "")),
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
        // The XDG base directory specification wants a path that is not absolute to be ignored.
        String given = environment.apply("XDG_DATA_HOME");
        Path data = given.isEmpty() || !Path.of(given).isAbsolute() ? userHome.resolve(".local/share") : Path.of(given);
        return data.resolve("bookholder");
    }

    /** Where sessions go unless a place is named. */
    Path sessions() {
        return data.resolve("sessions");
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
