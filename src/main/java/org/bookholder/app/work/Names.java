package org.bookholder.app.work;

import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.bookholder.app.environment.Environment;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionSummary;

/** Names of files for people. */
final class Names {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm", Locale.ENGLISH);

    private Names() {}

    /** The name of a file or folder, without its path. */
    static String of(Path path) {
        return path.getFileName() == null ? path.toString() : path.getFileName().toString();
    }

    /** A session's title and when it began; its folder's name if that is not known. */
    static String ofSession(Path session, Environment here) {
        SessionSummary summary = SessionFolder.summary(session, here.locks());
        return summary.began()
                .filter(began -> !summary.title().isEmpty())
                .map(began -> summary.title() + ", " + TIME.format(began.atZone(here.zone())))
                .orElse(of(session));
    }

    /** The first name, and how many there are besides. */
    static String of(List<Path> paths) {
        String first = of(paths.get(0));
        return paths.size() == 1 ? first : first + " and " + (paths.size() - 1) + " more";
    }
}
