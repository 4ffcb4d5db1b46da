package org.bookholder.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Names new session folders. */
final class SessionPlace {
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("uuuu-MM-dd-HHmm", Locale.ROOT);
    private static final int MOST_CHARACTERS = 40;

    private SessionPlace() {}

    /** A folder under {@code parent} that does not exist yet, named after the time of day and the lesson. */
    static Path unused(Path parent, String title, Surroundings here) {
        String name = DATE.format(here.clock().instant().atZone(here.zone())) + "-" + plain(title);
        Path place = parent.resolve(name);
        for (int i = 2; Files.exists(place); i++) {
            place = parent.resolve(name + "-" + i);
        }
        return place;
    }

    /** The title in letters, digits and hyphens, which every file system takes. */
    static String plain(String title) {
        String plain = title.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-");
        int end = Math.min(plain.length(), MOST_CHARACTERS);
        String cut = plain.substring(0, end).replaceAll("^-+|-+$", "");
        return cut.isEmpty() ? "lesson" : cut;
    }
}
