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

/**
 * How numbers, units and the like were said in a session, kept in its folder so that a course's habits are found without working out every
 * session.
 *
 * @param course the folder of the course, or that of the script if it belongs to none
 * @param said each of them that was heard, in the order of the script
 */
public record SaidNotes(String course, List<Said> said) {
    private static final String FILE = "said.json";
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .build();

    /** Copies the list. */
    public SaidNotes {
        said = List.copyOf(said);
    }

    /**
     * One of them.
     *
     * @param written the script's word, without the punctuation around it, in lower case
     * @param usual its preferred form
     * @param said the form that was said
     * @param line the line, from 1
     * @param take the take, from 1
     * @param from seconds of the take's recording at which it begins
     * @param to seconds at which it ends
     */
    public record Said(String written, String usual, String said, int line, int take, double from, double to) {}

    /** The notes of a session; empty if there are none, or they can't be read. */
    public static Optional<SaidNotes> of(Path session) {
        try {
            return Optional.ofNullable(MAPPER.readValue(Files.readString(session.resolve(FILE)), SaidNotes.class));
        } catch (IOException none) {
            return Optional.empty();
        }
    }

    /**
     * Writes them to a session's folder.
     *
     * @throws ProblemException if they can't be written
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
