package org.bookholder.journal;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.DiskProblems;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.AcceptedReading;

/**
 * Recognition errors that a producer has corrected in a session, kept in its folder so that the next session of the
 * same course can use them. A course is the folder that holds its scripts.
 *
 * @param course the folder of the session's script
 * @param readRight readings that the program called wrong and the producer accepted
 */
public record ReadRightNotes(String course, List<AcceptedReading> readRight) {
    private static final String FILE = "read-right.json";
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .build();

    /** Copies the list. */
    public ReadRightNotes {
        readRight = List.copyOf(readRight);
    }

    /** The course that a script belongs to. */
    public static String courseOf(Path script) {
        Path folder = script.toAbsolutePath().normalize().getParent();
        return folder == null ? "" : folder.toString();
    }

    /** The notes of a session; empty if there are none, or they cannot be read. */
    public static Optional<ReadRightNotes> of(Path session) {
        try {
            return Optional.ofNullable(MAPPER.readValue(Files.readString(session.resolve(FILE)), ReadRightNotes.class));
        } catch (IOException none) {
            return Optional.empty();
        }
    }

    /** Corrections from all sessions in a folder that apply to the whole course, not to a single line. */
    public static List<AcceptedReading> ofCourse(Path sessions, String course) {
        Set<AcceptedReading> learned = new LinkedHashSet<>();
        try (Stream<Path> entries = Files.list(sessions)) {
            for (Path session : new ArrayList<>(entries.sorted().toList())) {
                of(session)
                        .filter(n -> n.course().equals(course))
                        .ifPresent(n -> n.readRight().stream()
                                .filter(r -> r.line() == 0)
                                .forEach(learned::add));
            }
        } catch (IOException none) {
            return List.of();
        }
        return List.copyOf(learned);
    }

    /**
     * Writes them to a session's folder.
     *
     * @throws ProblemException if they cannot be written
     */
    public void keep(Path session) throws ProblemException {
        Path file = session.resolve(FILE);
        try {
            new AtomicFiles(Access.OWNER)
                    .write(file, MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(this) + "\n");
        } catch (IOException e) {
            throw DiskProblems.writing(file, e);
        }
    }
}
