package org.bookholder.app.film;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.PrivateFiles;
import org.bookholder.film.FilmMade;
import org.bookholder.sound.LoudnessReading;

/**
 * Remembers the finished films of a session, so that none is made twice. A note that cannot be read or written costs no more than
 * that.
 *
 * @param folder where the notes lie; need not exist
 */
record FilmShelf(Path folder) {
    private static final String NOTES = "films.json";

    /** A film that was made, and how its file was then. */
    private record Note(
            String file,
            List<String> beside,
            double seconds,
            LoudnessReading loudness,
            boolean held,
            String madeFrom,
            long bytes,
            String modified) {
        static Note of(FilmMade made, String madeFrom) throws IOException {
            return new Note(
                    made.file().toString(),
                    made.beside().stream().map(Path::toString).toList(),
                    made.seconds(),
                    made.loudness(),
                    made.held(),
                    madeFrom,
                    Files.size(made.file()),
                    Files.getLastModifiedTime(made.file()).toString());
        }

        boolean isWhole() {
            Path film = Path.of(file);
            try {
                return Files.isRegularFile(film)
                        && beside.stream().map(Path::of).allMatch(Files::isRegularFile)
                        && Files.size(film) == bytes
                        && Files.getLastModifiedTime(film).toString().equals(modified);
            } catch (IOException e) {
                return false;
            }
        }

        FilmMade made() {
            return new FilmMade(Path.of(file), beside.stream().map(Path::of).toList(), seconds, loudness, held);
        }
    }

    /**
     * The last film that was made under a name, if its file is still as it was then.
     *
     * @param wanted the name that was wanted, which it need not have got
     * @param madeFrom the fingerprint of what it must be made from
     */
    Optional<FilmMade> made(Path wanted, String madeFrom) {
        return Optional.ofNullable(notes().get(key(wanted)))
                .filter(note -> note.madeFrom().equals(madeFrom) && note.isWhole())
                .map(Note::made);
    }

    /** Notes that a film was made. */
    void keep(Path wanted, FilmMade made, String madeFrom) {
        Map<String, Note> all = notes();
        all.values().removeIf(note -> !note.isWhole());
        try {
            all.put(key(wanted), Note.of(made, madeFrom));
            PrivateFiles.createFolder(folder);
            new AtomicFiles(Access.OWNER).write(folder.resolve(NOTES), new JsonMapper().writeValueAsString(all));
        } catch (IOException e) {
            // Without a note the film is made again when it is asked for again.
        }
    }

    private Map<String, Note> notes() {
        try {
            return new JsonMapper()
                    .readValue(Files.readString(folder.resolve(NOTES)), new TypeReference<HashMap<String, Note>>() {});
        } catch (IOException e) {
            return new HashMap<>();
        }
    }

    private static String key(Path wanted) {
        return wanted.toAbsolutePath().normalize().toString();
    }
}
