package org.bookholder.film.picture;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.PrivateFiles;
import org.bookholder.files.UnusedName;
import org.bookholder.film.plan.Fingerprint;
import org.bookholder.problem.ProblemException;

/**
 * Keeps the pictures of a film's clips, so that only what changed is made again. A clip is known by all that makes it what it
 * is: its source with size and date, times, framing, what is written into it, and how it is stored. Confined to one thread.
 *
 * @param folder where they are kept; need not exist
 */
public record ClipStore(Path folder) {
    /** A program that makes other clips of the same order changes this, or old ones would pass for its own. */
    private static final String EDITION = "1";

    /**
     * The name under which a clip is kept.
     *
     * @param order all that makes it what it is
     * @param source the file that it is made of; the same path may hold another film later
     * @param ending the ending of its file's name, with the dot
     */
    String name(List<String> order, List<Path> source, String ending) throws ProblemException {
        StringBuilder all = new StringBuilder(EDITION);
        order.forEach(part -> all.append('\0').append(part));
        for (Path file : source) {
            try {
                all.append('\0').append(Files.size(file)).append('\0').append(Files.getLastModifiedTime(file));
            } catch (IOException e) {
                throw DiskProblems.reading(file, e);
            }
        }
        return Fingerprint.of(all.toString()) + ending;
    }

    /** Where a clip is kept, or would be. */
    public Path file(String name) {
        return folder.toAbsolutePath().resolve(name);
    }

    /** Whether any clip is there. */
    public boolean hasAny() {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.anyMatch(Files::isRegularFile);
        } catch (IOException e) {
            return false;
        }
    }

    /** Whether a clip is there. */
    boolean has(String name) {
        return Files.isRegularFile(file(name));
    }

    /** Takes a clip in that was made elsewhere, whole or not at all. */
    void keep(Path made, String name) throws ProblemException {
        try {
            PrivateFiles.createFolder(folder);
            UnusedName.move(made, file(name));
        } catch (IOException e) {
            throw DiskProblems.writing(folder, e);
        }
    }

    /**
     * Removes all but these: what the last film does not use will hardly be used again. While another film is being made here, all
     * stay.
     *
     * @param run the folder, in that of the clips, in which this film is made
     */
    public void keepOnly(Set<String> names, Path run) throws ProblemException {
        if (!Files.isDirectory(folder)) {
            return;
        }
        try (Stream<Path> entries = Files.list(folder)) {
            List<Path> all = entries.toList();
            if (all.stream().anyMatch(entry -> Files.isDirectory(entry) && !entry.equals(run))) {
                return;
            }
            for (Path file : all) {
                if (Files.isRegularFile(file) && !names.contains(String.valueOf(file.getFileName()))) {
                    Files.deleteIfExists(file);
                }
            }
        } catch (IOException e) {
            throw DiskProblems.writing(folder, e);
        }
    }
}
