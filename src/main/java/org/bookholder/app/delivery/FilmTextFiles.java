package org.bookholder.app.delivery;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.files.FileNames;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.handoff.HandOffWriter;
import org.bookholder.handoff.captions.FilmTexts;
import org.bookholder.problem.ProblemException;

/**
 * Writes captions, transcript and chapters of a film into the folder {@code captions} beside it. A folder of their own
 * keeps a transcript from being taken for a lesson of the course.
 */
public final class FilmTextFiles {
    private static final String FOLDER = "captions";

    private FilmTextFiles() {}

    /**
     * Writes the files under the film's name; if any file of that name is there already, under a name with a number, so that
     * none is replaced.
     *
     * @return the files in order
     */
    public static List<Path> write(Path film, FilmTexts texts) throws ProblemException {
        Path folder = film.toAbsolutePath().resolveSibling(FOLDER);
        String stem = FileNames.stem(film);
        String name = stem;
        for (int number = 2; taken(folder, texts.files(name)); number++) {
            name = stem + "-" + number;
        }
        return new HandOffWriter().write(folder, texts.files(name), false);
    }

    private static boolean taken(Path folder, List<HandOffFile> files) {
        return files.stream().anyMatch(file -> Files.exists(folder.resolve(file.name())));
    }
}
