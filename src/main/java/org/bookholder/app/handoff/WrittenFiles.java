package org.bookholder.app.handoff;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;

/**
 * Remembers which files hand-offs have written, so that one that replaces another leaves none of the other's files beside its own. Notes
 * that cannot be read or written cost no more than that.
 *
 * @param sessions the folders of the hand-off's sessions, in which the notes are
 */
record WrittenFiles(List<Path> sessions) {
    private static final String NOTES = "handoff-files.json";
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
            .build();

    /**
     * A file.
     *
     * @param kind the name of its kind
     * @param file where it was written
     * @param bytes how large it was then
     * @param modified when it was written
     */
    record Note(String kind, String file, long bytes, String modified) {
        /** Refuses what is no path on this system. */
        Note {
            file = Path.of(file).toString();
        }

        static Note of(String kind, Path file) throws IOException {
            return new Note(
                    kind,
                    whole(file).toString(),
                    Files.size(file),
                    Files.getLastModifiedTime(file).toString());
        }

        private boolean isIn(Path folder) {
            return whole(folder).equals(Path.of(file).getParent());
        }

        /** Whether it is as it was written: what somebody has changed since is theirs. */
        private boolean isWhole() {
            try {
                Path path = Path.of(file);
                return Files.isRegularFile(path)
                        && Files.size(path) == bytes
                        && Files.getLastModifiedTime(path).toString().equals(modified);
            } catch (IOException e) {
                return false;
            }
        }
    }

    WrittenFiles {
        sessions = List.copyOf(sessions);
    }

    /** The files of an earlier hand-off that lie in a folder as they were written, without those that were written now. */
    List<Note> earlier(Path folder, Collection<Path> now) {
        Set<String> ours =
                Set.copyOf(now.stream().map(file -> whole(file).toString()).toList());
        return sessions.stream()
                .flatMap(session -> read(session).stream())
                .filter(note -> note.isIn(folder) && !ours.contains(note.file()) && note.isWhole())
                .distinct()
                .toList();
    }

    /** Notes what was written, by its kind. */
    void keep(Map<String, List<Path>> written) {
        Path session = sessions.get(sessions.size() - 1);
        Map<String, Note> all = new HashMap<>();
        read(session).stream().filter(Note::isWhole).forEach(note -> all.put(note.file(), note));
        try {
            for (Map.Entry<String, List<Path>> kind : written.entrySet()) {
                for (Path file : kind.getValue()) {
                    Note note = Note.of(kind.getKey(), file);
                    all.put(note.file(), note);
                }
            }
            new AtomicFiles(Access.OWNER)
                    .write(session.resolve(NOTES), MAPPER.writeValueAsString(new ArrayList<>(all.values())));
        } catch (IOException e) {
            // Without a note these files stay where a later hand-off is written.
        }
    }

    private static List<Note> read(Path session) {
        try {
            List<Note> notes =
                    MAPPER.readValue(Files.readString(session.resolve(NOTES)), new TypeReference<List<Note>>() {});
            return notes == null
                    ? List.of()
                    : notes.stream().filter(Objects::nonNull).toList();
        } catch (IOException e) {
            return List.of();
        }
    }

    private static Path whole(Path path) {
        return path.toAbsolutePath().normalize();
    }
}
