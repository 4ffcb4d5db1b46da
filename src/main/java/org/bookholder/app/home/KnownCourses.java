package org.bookholder.app.home;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.course.CourseJson;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.PrivateFiles;
import org.bookholder.problem.ProblemException;

/** The courses that were open lately, the last one first, kept in a file. Safe for use by several threads. */
final class KnownCourses {
    private static final int MOST = 20;
    private static final JsonMapper MAPPER = new JsonMapper();

    private final Path file;
    private List<Entry> entries;

    /**
     * A course.
     *
     * @param folder its folder
     * @param title its title when it was last seen
     * @param note how far it had come then
     */
    record Entry(String folder, String title, String note) {
        /** Its name in addresses. */
        String name() {
            return CourseJson.name(Path.of(folder));
        }
    }

    /** Reads the list; one that can't be read is begun anew. */
    KnownCourses(Path file) {
        this.file = file;
        this.entries = read(file);
    }

    private static List<Entry> read(Path file) {
        try {
            return List.copyOf(MAPPER.readValue(Files.readString(file), new TypeReference<List<Entry>>() {}));
        } catch (IOException | RuntimeException none) {
            return List.of();
        }
    }

    synchronized List<Entry> all() {
        return entries;
    }

    synchronized Optional<Entry> find(String name) {
        return entries.stream().filter(entry -> entry.name().equals(name)).findFirst();
    }

    /** Puts a course first. */
    synchronized void use(Path folder) throws ProblemException {
        String path = folder.toString();
        Entry known = entries.stream()
                .filter(entry -> entry.folder().equals(path))
                .findFirst()
                .orElseGet(() -> new Entry(path, String.valueOf(folder.getFileName()), ""));
        List<Entry> changed = new ArrayList<>(without(path));
        changed.add(0, known);
        keep(changed.subList(0, Math.min(MOST, changed.size())));
    }

    /** Notes how a course was last seen; a disk that takes no notes is no reason to show nothing. */
    synchronized void saw(Path folder, String title, String note) {
        Entry seen = new Entry(folder.toString(), title, note);
        if (entries.contains(seen)) {
            return;
        }
        List<Entry> changed = new ArrayList<>(entries);
        changed.replaceAll(entry -> entry.folder().equals(seen.folder()) ? seen : entry);
        try {
            keep(changed);
        } catch (ProblemException e) {
            entries = List.copyOf(changed);
        }
    }

    /** Takes a course off the list; its folder stays as it is. */
    synchronized void forget(String name) throws ProblemException {
        Optional<Entry> known = find(name);
        if (known.isPresent()) {
            keep(without(known.get().folder()));
        }
    }

    private List<Entry> without(String folder) {
        return entries.stream().filter(entry -> !entry.folder().equals(folder)).toList();
    }

    private void keep(List<Entry> changed) throws ProblemException {
        try {
            PrivateFiles.createFolderFor(file);
            new AtomicFiles(Access.OWNER).write(file, MAPPER.writeValueAsString(changed));
            entries = List.copyOf(changed);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("courses must have a JSON form", e);
        } catch (IOException e) {
            throw new ProblemException(
                    "the list of courses can't be kept", file.toString(), "see that the folder can be written", e);
        }
    }
}
