package org.bookholder.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.bookholder.problem.ProblemException;

/** Names new session folders, and finds the last one by its name. */
final class SessionPlace {
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("uuuu-MM-dd-HHmm", Locale.ROOT);
    private static final Pattern NAMED = Pattern.compile("\\d{4}-\\d\\d-\\d\\d-\\d{4}-");
    private static final int MOST_CHARACTERS = 40;

    /** A session that began longer ago is another day's. */
    private static final Duration TODAY = Duration.ofHours(12);

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

    /** The newest session under {@code parent} of those named here, if it began within the last hours. */
    static Optional<Path> last(Path parent, Surroundings here) throws ProblemException {
        String since = DATE.format(here.clock().instant().minus(TODAY).atZone(here.zone()));
        return CourseSessions.folders(List.of(parent)).stream()
                .filter(folder ->
                        NAMED.matcher(name(folder)).lookingAt() && name(folder).compareTo(since) >= 0)
                .max(Comparator.comparing(SessionPlace::name));
    }

    private static String name(Path folder) {
        return String.valueOf(folder.getFileName());
    }

    /** The title in letters, digits and hyphens, which every file system takes. */
    static String plain(String title) {
        String plain = title.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-");
        int end = Math.min(plain.length(), MOST_CHARACTERS);
        String cut = plain.substring(0, end).replaceAll("^-+|-+$", "");
        return cut.isEmpty() ? "lesson" : cut;
    }
}
