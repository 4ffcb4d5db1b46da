package org.bookholder.app.film;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.DiskProblems;
import org.bookholder.film.FilmMade;
import org.bookholder.problem.ProblemException;

/**
 * Where drafts of one film lie: those of a lesson apart from those of one of its sessions. Only the newest is kept, with a note of
 * what it was made from.
 *
 * @param folder its folder; need not exist
 */
record DraftShelf(Path folder) {
    private static final String NOTE = "draft.json";

    /** How the beginnings of a draft that is being made are named; there are never ten. */
    private static final Pattern BEGUN = Pattern.compile("begun-\\d\\.mp4");

    /**
     * A draft.
     *
     * @param file its file
     * @param madeFrom the fingerprint of what it was made from
     */
    record Draft(Path file, String madeFrom) {
        /** Where it is served, below the session's films: its folder and its name. */
        String served() {
            Path folder = Objects.requireNonNull(file.getParent(), "a draft lies in a folder");
            return folder.getFileName() + "/" + file.getFileName();
        }
    }

    /** Those of a film, in the folder of the last session that it is made of. */
    static DraftShelf of(Path session, boolean lesson) {
        return new DraftShelf(
                session.resolve(FilmPlace.FOLDER).resolve(lesson ? "draft-of-lesson" : "draft-of-session"));
    }

    /** The newest draft; empty if there is none, or its note cannot be read. */
    Optional<Draft> newest() {
        try {
            JsonNode note = new ObjectMapper().readTree(Files.readString(folder.resolve(NOTE)));
            Path file = folder.resolve(note.path("file").asText());
            return folder.equals(file.getParent()) && Files.isRegularFile(file)
                    ? Optional.of(new Draft(file, note.path("made from").asText()))
                    : Optional.empty();
        } catch (IOException e) {
            // Without a note there is no draft to be seen; one can be made.
            return Optional.empty();
        }
    }

    /** The longest beginning of a draft that is being made; empty if there is none. */
    Optional<Draft> beginning() {
        if (!Files.isDirectory(folder)) {
            return Optional.empty();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file ->
                            BEGUN.matcher(String.valueOf(file.getFileName())).matches())
                    .max(Comparator.comparing(file -> String.valueOf(file.getFileName())))
                    .map(file -> new Draft(file, ""));
        } catch (IOException e) {
            // The draft will be there in a moment.
            return Optional.empty();
        }
    }

    /**
     * Notes that a draft was made, and removes those before it.
     *
     * @param made the draft, which lies in the folder
     * @param madeFrom the fingerprint of what it was made from
     * @throws ProblemException if the folder cannot be written
     */
    void keep(FilmMade made, String madeFrom) throws ProblemException {
        try {
            new AtomicFiles(Access.OWNER).write(folder.resolve(NOTE), note(made, madeFrom));
            List<Path> all;
            try (Stream<Path> files = Files.list(folder)) {
                all = files.filter(Files::isRegularFile).toList();
            }
            // By their names: one of the two folders may be named from the working folder on.
            Set<String> kept = Stream.concat(made.beside().stream(), Stream.of(made.file(), folder.resolve(NOTE)))
                    .map(DraftShelf::name)
                    .collect(Collectors.toSet());
            for (Path file : all) {
                if (!kept.contains(name(file))) {
                    remove(file);
                }
            }
        } catch (IOException e) {
            throw DiskProblems.writing(folder, e);
        }
    }

    private static String note(FilmMade made, String madeFrom) throws JsonProcessingException {
        return new ObjectMapper()
                .writeValueAsString(JsonNodeFactory.instance
                        .objectNode()
                        .put("file", String.valueOf(made.file().getFileName()))
                        .put("made from", madeFrom));
    }

    private static String name(Path file) {
        return String.valueOf(file.getFileName());
    }

    private static void remove(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // Windows keeps a file that is being played; the next draft removes it.
        }
    }
}
