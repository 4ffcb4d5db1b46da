package org.bookholder.app.day;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.app.environment.Environment;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.FileNames;
import org.bookholder.files.PrivateFiles;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;

/**
 * The sessions that a presenter opened on this machine, wherever they are kept, in the order in which they were last
 * opened. A file of its own for each presenter's name.
 */
final class PresenterSessions {
    /** More than anybody opens on a day. */
    private static final int MOST = 200;

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .build();

    private final Path file;

    /** What the file holds. */
    private record Kept(List<String> sessions) {}

    PresenterSessions(Environment here, String presenter) {
        file = here.data().resolve("presenters").resolve(FileNames.ofTitle(presenter) + ".json");
    }

    /** The folders that still are there, the last opened one last; a file that cannot be understood counts as none. */
    List<Path> all() throws ProblemException {
        try {
            return MAPPER.readValue(Files.readString(file), Kept.class).sessions().stream()
                    .map(Path::of)
                    .filter(SessionFolder::isSession)
                    .toList();
        } catch (NoSuchFileException | JsonProcessingException none) {
            return List.of();
        } catch (IOException e) {
            throw DiskProblems.reading(file, e);
        }
    }

    /**
     * Puts a session last.
     *
     * @throws ProblemException if the list cannot be read or written
     */
    void opened(Path session) throws ProblemException {
        Path place = session.toAbsolutePath().normalize();
        List<Path> sessions = new ArrayList<>(all());
        sessions.remove(place);
        sessions.add(place);
        List<String> kept = sessions.stream()
                .skip(Math.max(0, sessions.size() - MOST))
                .map(Path::toString)
                .toList();
        try {
            PrivateFiles.createFolderFor(file);
            new AtomicFiles(Access.OWNER)
                    .write(file, MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(new Kept(kept)) + "\n");
        } catch (IOException e) {
            throw DiskProblems.writing(file, e);
        }
    }
}
