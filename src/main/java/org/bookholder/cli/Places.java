package org.bookholder.cli;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Map;

/** Where the program's own files lie and where sessions are kept. */
final class Places {
    private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern("yyyy-MM-dd-HHmmss", Locale.ROOT);

    private Places() {}

    /** The folder that holds {@code models} and {@code demo-scripts}. */
    static Path home() {
        return Path.of(System.getProperty("bookholder.home", ""));
    }

    /** The speech model that the build brings. */
    static Path model() {
        return home().resolve("models").resolve("vosk-model-en-us");
    }

    /** The platform's usual place for a program's data, and in it the sessions. */
    static Path sessions(Map<String, String> environment, String system, String userHome) {
        Path data;
        if (system.startsWith("Windows") && environment.containsKey("LOCALAPPDATA")) {
            data = Path.of(environment.get("LOCALAPPDATA"));
        } else if (system.startsWith("Mac")) {
            data = Path.of(userHome, "Library", "Application Support");
        } else if (environment.getOrDefault("XDG_DATA_HOME", "").isEmpty()) {
            data = Path.of(userHome, ".local", "share");
        } else {
            data = Path.of(environment.get("XDG_DATA_HOME"));
        }
        return data.resolve("bookholder").resolve("sessions");
    }

    static Path sessions() {
        return sessions(System.getenv(), System.getProperty("os.name"), System.getProperty("user.home"));
    }

    /** A new session's folder, named by its beginning and its lesson. */
    static Path session(LocalDateTime begin, String title) {
        String name = title.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-");
        return sessions().resolve(STAMP.format(begin) + "-" + name.substring(0, Math.min(40, name.length())));
    }
}
