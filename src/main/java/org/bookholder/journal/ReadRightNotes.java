package org.bookholder.journal;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.DiskProblems;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.AcceptedReading;

/**
 * Whose session it is, and which of its people's decisions are kept with that presenter already; in the session's folder. So a decision
 * that was made just before a kill is kept once the session is opened again, and one that was forgotten since isn't.
 *
 * @param presenter the presenter's name, as it was given when the session began
 * @param readRight words that are heard as something else, as was decided in this session
 */
public record ReadRightNotes(String presenter, List<AcceptedReading> readRight) {
    private static final String FILE = "read-right.json";
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .build();

    /** Copies the list. */
    public ReadRightNotes {
        readRight = List.copyOf(readRight);
    }

    /** The notes of a session; empty if there are none, or they cannot be read. */
    public static Optional<ReadRightNotes> of(Path session) {
        try {
            return Optional.ofNullable(MAPPER.readValue(Files.readString(session.resolve(FILE)), ReadRightNotes.class));
        } catch (IOException none) {
            return Optional.empty();
        }
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
