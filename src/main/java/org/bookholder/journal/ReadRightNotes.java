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
 * What a session has taught about the recogniser, beside the session, so that the next session of the same course can begin
 * with it. A course is the folder that its scripts lie in.
 *
 * @param course the folder of the session's script
 * @param readRight calls that were wrong
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

    /** The course of a script's file. */
    public static String courseOf(Path script) {
        Path folder = script.toAbsolutePath().normalize().getParent();
        return folder == null ? "" : folder.toString();
    }

    /** The notes of a session; empty if it has none that can be read. */
    public static Optional<ReadRightNotes> of(Path session) {
        try {
            return Optional.of(MAPPER.readValue(Files.readString(session.resolve(FILE)), ReadRightNotes.class));
        } catch (IOException none) {
            return Optional.empty();
        }
    }

    /** What sessions that lie in one folder have taught of other lines of a course than their own. */
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
     * Keeps them beside a session.
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
