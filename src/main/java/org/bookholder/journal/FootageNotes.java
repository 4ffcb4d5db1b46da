package org.bookholder.journal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.DiskProblems;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.journal.event.TimeModule;
import org.bookholder.problem.ProblemException;

/**
 * The camera files that belong to a session, in {@code footage.json} in its folder; times in ticks.
 *
 * <p>Not part of the journal: it does not record what happened, only where files lie on this machine. If they are
 * moved, match them again.
 */
public final class FootageNotes {
    private static final String FILE = "footage.json";
    private static final String HEARINGS = "hearings";
    private static final String LEVELS = "levels";
    private static final String DAMAGED = "cannot be understood";
    private static final String REMEDY = "delete it and match the footage again";

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .addModule(new TimeModule())
            .addModule(new Jdk8Module())
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
            .build();

    private FootageNotes() {}

    private record Notes(List<PlacedFootage> footage) {}

    /**
     * The footage matched with the session in {@code folder}; empty if there is none.
     *
     * @throws ProblemException if the notes cannot be read
     */
    public static List<PlacedFootage> read(Path folder) throws ProblemException {
        Path file = folder.resolve(FILE);
        if (!Files.exists(file)) {
            return List.of();
        }
        try {
            JsonNode notes = MAPPER.readTree(Files.readString(file));
            // Earlier versions did not measure how takes are heard, or not how loud each channel is.
            for (JsonNode placed : notes.path("footage")) {
                addIfMissing(placed, HEARINGS);
                placed.path(HEARINGS).forEach(hearing -> addIfMissing(hearing, LEVELS));
            }
            if (!notes.isObject()) {
                throw new ProblemException(DAMAGED, file.toString(), REMEDY);
            }
            return MAPPER.treeToValue(notes, Notes.class).footage();
        } catch (JsonProcessingException e) {
            throw new ProblemException(DAMAGED, file.toString(), REMEDY, e);
        } catch (IOException e) {
            throw DiskProblems.reading(file, e);
        }
    }

    private static void addIfMissing(JsonNode node, String list) {
        if (node instanceof ObjectNode object && !object.has(list)) {
            object.putArray(list);
        }
    }

    /**
     * Adds footage; entries for the same files are replaced, others stay.
     *
     * @throws ProblemException if the notes cannot be written
     */
    public static void keep(Path folder, List<PlacedFootage> footage) throws ProblemException {
        List<PlacedFootage> all = new ArrayList<>(read(folder));
        all.removeIf(old -> footage.stream()
                .anyMatch(f -> f.footage().file().equals(old.footage().file())));
        all.addAll(footage);
        Path file = folder.resolve(FILE);
        try {
            new AtomicFiles(Access.OWNER)
                    .write(file, MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(new Notes(all)) + "\n");
        } catch (IOException e) {
            throw DiskProblems.writing(file, e);
        }
    }
}
