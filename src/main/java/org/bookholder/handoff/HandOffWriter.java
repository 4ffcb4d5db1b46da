package org.bookholder.handoff;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.bookholder.problem.ProblemException;

/**
 * Writes the files of a hand-off: all or none. Each is written beside its place first; only when all are whole do they
 * take their names.
 */
public final class HandOffWriter {
    private final AtomicFile.Move move;

    /** Creates a writer that renames files. */
    public HandOffWriter() {
        this(AtomicFile::rename);
    }

    HandOffWriter(AtomicFile.Move move) {
        this.move = move;
    }

    /**
     * Writes files.
     *
     * @param folder where to; made if it is not there
     * @param replace whether files of the same name may be replaced
     * @return the files, in order
     * @throws ProblemException if a file is there already and may not be replaced, or the folder cannot be written;
     *     nothing is changed then
     */
    public List<Path> write(Path folder, List<HandOffFile> files, boolean replace) throws ProblemException {
        if (!replace) {
            refuseExisting(folder, files);
        }
        Map<Path, Path> drafts = new LinkedHashMap<>();
        try {
            if (!Files.isDirectory(folder)) {
                Files.createDirectories(folder);
            }
            for (HandOffFile file : files) {
                Path draft = folder.resolve("." + file.name() + ".part");
                drafts.put(draft, folder.resolve(file.name()));
                // Should the program be interrupted (Ctrl-C), nothing half-written stays behind.
                draft.toFile().deleteOnExit();
                try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(draft))) {
                    file.content().write(out);
                }
            }
            for (Map.Entry<Path, Path> draft : drafts.entrySet()) {
                move.move(draft.getKey(), draft.getValue());
            }
            return List.copyOf(drafts.values());
        } catch (IOException e) {
            throw problem(folder, e);
        } finally {
            discard(new ArrayList<>(drafts.keySet()));
        }
    }

    private static void refuseExisting(Path folder, List<HandOffFile> files) throws ProblemException {
        for (HandOffFile file : files) {
            Path place = folder.resolve(file.name());
            if (Files.exists(place)) {
                throw new ProblemException(
                        "the file is there already, and nothing was written",
                        place.toString(),
                        "name another folder with --out, or add --replace");
            }
        }
    }

    private static void discard(List<Path> drafts) {
        for (Path draft : drafts) {
            try {
                Files.deleteIfExists(draft);
            } catch (IOException e) {
                // What went wrong before is what the user is told of; a leftover draft harms nothing.
            }
        }
    }

    private static ProblemException problem(Path folder, IOException e) {
        String reason = e instanceof FileSystemException f && f.getReason() != null ? f.getReason() : e.getMessage();
        String why = e instanceof AccessDeniedException ? "permission denied" : reason == null ? e.toString() : reason;
        return new ProblemException(
                "the hand-off cannot be written (" + why + ")",
                folder.toString(),
                "name a folder with --out that can be written and has room",
                e);
    }
}
