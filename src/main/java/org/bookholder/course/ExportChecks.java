package org.bookholder.course;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.PrivateFiles;
import org.bookholder.problem.ProblemException;

/**
 * Keeps the checks of exported files, each as {@code checks/EXPORT.json} in the course's folder. A check is valid only
 * while the file has the same size and time of last change as when it was checked.
 */
public final class ExportChecks {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
            .build();

    private ExportChecks() {}

    /** A check as it is written to disk, with times as text. */
    private record Note(
            String file, long size, String modified, String checked, boolean passed, List<String> findings) {}

    /**
     * Keeps the result of a check of {@code export}.
     *
     * @param course the course's folder
     * @param export the file that was checked
     * @param checked when
     * @param findings why it cannot be delivered yet, one line for each reason; empty if it can
     * @throws ProblemException if the note cannot be written
     */
    public static ExportCheck keep(Path course, Path export, Instant checked, List<String> findings)
            throws ProblemException {
        Path note = note(course, export);
        try {
            BasicFileAttributes file = Files.readAttributes(export, BasicFileAttributes.class);
            ExportCheck check = new ExportCheck(
                    String.valueOf(export.getFileName()), file.size(), changed(file), checked, findings);
            PrivateFiles.createFolderFor(note);
            String json = MAPPER.writerWithDefaultPrettyPrinter()
                    .writeValueAsString(new Note(
                            check.file(),
                            check.size(),
                            check.modified().toString(),
                            checked.toString(),
                            check.passed(),
                            check.findings()));
            new AtomicFiles(Access.OWNER).write(note, json + "\n");
            return check;
        } catch (IOException e) {
            throw new ProblemException(
                    "the check's result cannot be noted",
                    note.toString(),
                    "check the folder's permissions and room",
                    e);
        }
    }

    /**
     * The check of a file, if it was checked and has not been changed since.
     *
     * @throws ProblemException if the note exists but cannot be read
     */
    public static Optional<ExportCheck> read(Path course, Path export) throws ProblemException {
        Path note = note(course, export);
        if (!Files.exists(note) || !Files.exists(export)) {
            return Optional.empty();
        }
        try {
            Note found = MAPPER.readValue(Files.readString(note), Note.class);
            ExportCheck check = new ExportCheck(
                    found.file(),
                    found.size(),
                    Instant.parse(found.modified()),
                    Instant.parse(found.checked()),
                    found.findings());
            BasicFileAttributes file = Files.readAttributes(export, BasicFileAttributes.class);
            boolean same = file.size() == check.size() && changed(file).equals(check.modified());
            return same ? Optional.of(check) : Optional.empty();
        } catch (JsonProcessingException | DateTimeParseException e) {
            throw new ProblemException(
                    "this note of a check cannot be understood",
                    note.toString(),
                    "delete it and check the export again",
                    e);
        } catch (IOException e) {
            throw new ProblemException(
                    "this note of a check cannot be read", note.toString(), "check its permissions", e);
        }
    }

    /** To the second, because some file systems keep no more; so a copied course keeps its checks. */
    private static Instant changed(BasicFileAttributes file) {
        return file.lastModifiedTime().toInstant().truncatedTo(ChronoUnit.SECONDS);
    }

    private static Path note(Path course, Path export) {
        return course.resolve("checks").resolve(export.getFileName() + ".json");
    }
}
