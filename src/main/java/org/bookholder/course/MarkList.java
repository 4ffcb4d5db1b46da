package org.bookholder.course;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.util.List;
import java.util.function.Consumer;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.problem.ProblemException;

/** What people have marked in a course: a file with a list as JSON, in the course's folder. */
public final class MarkList {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
            .build();

    private MarkList() {}

    /**
     * Reads marks; none if there is no such file.
     *
     * @param kind an array of marks
     * @param older adds to a mark of an earlier version what it lacks
     * @param check sees whether a mark can be understood; throws a {@link DateTimeException} if its dates can't
     * @throws ProblemException if they can't be read
     */
    static <T> List<T> read(Path file, Class<T[]> kind, Consumer<ObjectNode> older, Consumer<T> check)
            throws ProblemException {
        if (!Files.exists(file)) {
            return List.of();
        }
        try {
            JsonNode written = MAPPER.readTree(Files.readString(file));
            if (!written.isArray()) {
                throw MismatchedInputException.from(null, kind, "this is no list");
            }
            for (JsonNode mark : written) {
                if (mark instanceof ObjectNode known) {
                    older.accept(known);
                }
            }
            List<T> marks = List.of(MAPPER.treeToValue(written, kind));
            marks.forEach(check);
            return marks;
        } catch (JsonProcessingException | DateTimeException e) {
            throw new ProblemException(
                    "the marks cannot be understood", file.toString(), "mend the file, or delete it and mark anew", e);
        } catch (IOException e) {
            throw new ProblemException("the marks cannot be read", file.toString(), "check its permissions", e);
        }
    }

    /** The same for marks that have always had what they have. */
    public static <T> List<T> read(Path file, Class<T[]> kind, Consumer<T> check) throws ProblemException {
        return read(file, kind, older -> {}, check);
    }

    /** Saves marks, whole or not at all. */
    public static void write(Path file, List<?> marks) throws ProblemException {
        try {
            String json = MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(marks);
            new AtomicFiles(Access.OWNER).write(file, json + "\n");
        } catch (IOException e) {
            throw new ProblemException(
                    "the mark cannot be kept", file.toString(), "check the folder's permissions and room", e);
        }
    }
}
