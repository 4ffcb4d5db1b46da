package org.bookholder.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.function.UnaryOperator;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Warnings;
import org.bookholder.journal.SessionLocks;
import org.bookholder.runtime.stage.Helpers;

/** Gets the environment of the process from the machine: clock, time zone and the user's folders. */
final class Machine {
    private Machine() {}

    /** The environment of this process. */
    static Environment environment() {
        String system = System.getProperty("os.name", "");
        Path userHome = userHome();
        UnaryOperator<String> variables = name -> System.getenv().getOrDefault(name, "");
        return new Environment(
                Instant::now,
                System::nanoTime,
                ZoneId.systemDefault(),
                Path.of(System.getProperty("bookholder.home", "")).toAbsolutePath(),
                dataFolder(system, userHome, variables),
                settingsFolder(system, userHome, variables),
                new SessionLocks(),
                new Warnings(unheard -> {}),
                Helpers.ofThisMachine(),
                new Installed.OnThisMachine());
    }

    /** The user's own folder. */
    static Path userHome() {
        return Path.of(System.getProperty("user.home", "")).toAbsolutePath();
    }

    /** The folder for a user's data by the platform's conventions. */
    static Path dataFolder(String system, Path userHome, UnaryOperator<String> variables) {
        if (system.startsWith("Mac")) {
            return userHome.resolve("Library/Application Support/Bookholder");
        }
        if (system.startsWith("Windows")) {
            String local = variables.apply("LOCALAPPDATA");
            return (local.isEmpty() ? userHome.resolve("AppData/Local") : Path.of(local)).resolve("Bookholder");
        }
        return baseFolder(variables.apply("XDG_DATA_HOME"), userHome.resolve(".local/share"));
    }

    /** The user's folder for what can be made again. */
    static Path cacheFolder() {
        return cacheFolder(
                System.getProperty("os.name", ""),
                Path.of(System.getProperty("user.home", "")),
                name -> System.getenv().getOrDefault(name, ""));
    }

    /** The folder for temporary files that all users share. */
    static Path temporaryFolder() {
        return Path.of(System.getProperty("java.io.tmpdir", "."));
    }

    /** The folder for what can be made again, by the platform's conventions. */
    static Path cacheFolder(String system, Path userHome, UnaryOperator<String> variables) {
        if (system.startsWith("Mac")) {
            return userHome.resolve("Library/Caches/Bookholder");
        }
        if (system.startsWith("Windows")) {
            return dataFolder(system, userHome, variables).resolve("Cache");
        }
        return baseFolder(variables.apply("XDG_CACHE_HOME"), userHome.resolve(".cache"));
    }

    /** The folder for a user's settings by the platform's conventions. */
    static Path settingsFolder(String system, Path userHome, UnaryOperator<String> variables) {
        if (system.startsWith("Mac")) {
            return dataFolder(system, userHome, variables);
        }
        if (system.startsWith("Windows")) {
            String roaming = variables.apply("APPDATA");
            return (roaming.isEmpty() ? userHome.resolve("AppData/Roaming") : Path.of(roaming)).resolve("Bookholder");
        }
        return baseFolder(variables.apply("XDG_CONFIG_HOME"), userHome.resolve(".config"));
    }

    /** The XDG base directory specification requires that a path that is not absolute be ignored. */
    private static Path baseFolder(String given, Path otherwise) {
        return (given.isEmpty() || !Path.of(given).isAbsolute() ? otherwise : Path.of(given)).resolve("bookholder");
    }
}
