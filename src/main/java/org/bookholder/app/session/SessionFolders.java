package org.bookholder.app.session;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.bookholder.app.environment.Environment;
import org.bookholder.files.FileNames;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;

/** Finds session folders, and names new ones. */
public final class SessionFolders {
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("uuuu-MM-dd-HHmm", Locale.ROOT);
    private static final Pattern NAMED = Pattern.compile("\\d{4}-\\d\\d-\\d\\d-\\d{4}-");

    /** A session that began or ended longer ago counts as another day's. */
    private static final Duration TODAY = Duration.ofHours(12);

    private SessionFolders() {}

    /** A new folder name under {@code parent}, made from the time and the lesson. */
    public static Path unused(Path parent, String title, Environment here) {
        String name = DATE.format(here.clock().instant().atZone(here.zone())) + "-" + FileNames.ofTitle(title);
        Path place = parent.resolve(name);
        for (int i = 2; Files.exists(place); i++) {
            place = parent.resolve(name + "-" + i);
        }
        return place;
    }

    /** The newest session under {@code parent} with a name from {@link #unused}, if it began within the last hours. */
    public static Optional<Path> last(Path parent, Environment here) throws ProblemException {
        return recent(parent, here).stream().findFirst();
    }

    /** All such sessions, the newest first. */
    public static List<Path> recent(Path parent, Environment here) throws ProblemException {
        String since = DATE.format(here.clock().instant().minus(TODAY).atZone(here.zone()));
        return folders(List.of(parent)).stream()
                .filter(folder ->
                        NAMED.matcher(name(folder)).lookingAt() && name(folder).compareTo(since) >= 0)
                .sorted(Comparator.comparing(SessionFolders::name).reversed())
                .toList();
    }

    /** Whether a session that ended at this time counts as today's: on this date, or within the last twelve hours. */
    public static boolean isOfToday(Instant ended, Environment here) {
        Instant now = here.clock().instant();
        return !ended.isBefore(now.minus(TODAY))
                || LocalDate.ofInstant(ended, here.zone()).equals(LocalDate.ofInstant(now, here.zone()));
    }

    /** The folders of all sessions in some places, sorted within each place; a missing place has none. */
    public static List<Path> folders(Collection<Path> places) throws ProblemException {
        Set<Path> once = new LinkedHashSet<>();
        places.forEach(place -> once.add(place.toAbsolutePath().normalize()));
        List<Path> folders = new ArrayList<>();
        for (Path place : once) {
            if (Files.isDirectory(place)) {
                try (Stream<Path> entries = Files.list(place)) {
                    entries.filter(SessionFolder::isSession).sorted().forEach(folders::add);
                } catch (IOException e) {
                    throw new ProblemException(
                            "the sessions cannot be read", place.toString(), "check its permissions", e);
                }
            }
        }
        return folders;
    }

    private static String name(Path folder) {
        return String.valueOf(folder.getFileName());
    }
}
