package org.bookholder.handoff;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.Content;
import org.bookholder.files.Disk;
import org.bookholder.files.FileOperations;
import org.bookholder.problem.ProblemException;

/**
 * Writes the files of a hand-off: all of them or none. They are meant to be passed on, so they get the usual
 * permissions.
 */
public final class HandOffWriter {
    private final AtomicFiles writer;

    /** Creates a writer on this machine's disk. */
    public HandOffWriter() {
        this(new Disk());
    }

    HandOffWriter(FileOperations operations) {
        writer = new AtomicFiles(operations, Access.SYSTEM_DEFAULT);
    }

    /**
     * Writes files.
     *
     * @param folder target folder; created if it does not exist
     * @param replace whether files of the same name may be replaced
     * @return the files, in order
     * @throws ProblemException if a file already exists and may not be replaced (its cause is a
     *     {@link FileAlreadyExistsException} then), or the folder cannot be written to; in that case nothing is changed, and
     *     no folder left behind
     */
    public List<Path> write(Path folder, List<HandOffFile> files, boolean replace) throws ProblemException {
        if (!replace) {
            refuseExisting(folder, files);
        }
        Map<Path, Content> contents = new LinkedHashMap<>();
        files.forEach(file -> contents.put(folder.resolve(file.name()), file.content()));
        List<Path> made = missing(folder);
        boolean done = false;
        try {
            if (!Files.isDirectory(folder)) {
                Files.createDirectories(folder);
            }
            writer.writeAll(contents);
            done = true;
            return List.copyOf(contents.keySet());
        } catch (IOException e) {
            throw problem(folder, e);
        } finally {
            if (!done) {
                remove(made);
            }
        }
    }

    /** The folders that are made with this one, the innermost first. */
    private static List<Path> missing(Path folder) {
        List<Path> missing = new ArrayList<>();
        for (Path up = folder.toAbsolutePath(); up != null && !Files.exists(up); up = up.getParent()) {
            missing.add(up);
        }
        return missing;
    }

    private static void remove(List<Path> folders) {
        try {
            for (Path folder : folders) {
                Files.deleteIfExists(folder);
            }
        } catch (IOException e) {
            // Somebody put something there meanwhile.
        }
    }

    private static void refuseExisting(Path folder, List<HandOffFile> files) throws ProblemException {
        for (HandOffFile file : files) {
            Path place = folder.resolve(file.name());
            if (Files.exists(place)) {
                throw new ProblemException(
                        "the file is there already, and nothing was written",
                        place.toString(),
                        "choose another folder, or choose to replace what is there",
                        new FileAlreadyExistsException(place.toString()));
            }
        }
    }

    private static ProblemException problem(Path folder, IOException e) {
        String reason = e instanceof FileSystemException f && f.getReason() != null ? f.getReason() : e.getMessage();
        String why = e instanceof AccessDeniedException ? "permission denied" : reason == null ? e.toString() : reason;
        return new ProblemException(
                "the hand-off cannot be written (" + why + ")",
                folder.toString(),
                "choose a folder that can be written and has room",
                e);
    }
}
