package org.bookholder.app.session;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.Progress;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.Content;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.DiskRoom;
import org.bookholder.files.PrivateFiles;
import org.bookholder.problem.ProblemException;

/**
 * Unpacks a session from an archive that {@link SessionPacking} has written, checking the sum of each file. The session is
 * there whole or not at all.
 */
public final class SessionUnpacking {
    private final Environment here;
    private final Consumer<Progress> progress;
    private final Interruption stop;

    /** Unpacks with this progress, until it is stopped. */
    public SessionUnpacking(Environment here, Consumer<Progress> progress, Interruption stop) {
        this.here = here;
        this.progress = progress;
        this.stop = stop;
    }

    /**
     * Unpacks a session.
     *
     * @param folder its new folder, which must be empty or not exist; if not given, one where sessions usually lie, with the
     *     name that it had
     * @return its new folder
     * @throws ProblemException if the archive is damaged or not of a session, or the folder is in use or cannot be written;
     *     nothing is left behind then
     */
    public Path unpack(Path archive, Optional<Path> folder) throws ProblemException {
        try (SessionArchive packed = SessionArchive.open(archive)) {
            Path place = folder.orElseGet(() -> here.sessions().resolve(packed.root()));
            boolean fresh = !Files.exists(place);
            try {
                checkEmpty(place);
                PrivateFiles.createFolder(place);
                checkRoom(packed, place);
                write(packed, place);
            } catch (IOException e) {
                throw DiskProblems.writing(place, e);
            } finally {
                tidy(place, fresh);
            }
            return place;
        }
    }

    private static void checkEmpty(Path place) throws ProblemException, IOException {
        if (Files.isDirectory(place) ? !isEmpty(place) : Files.exists(place)) {
            throw new ProblemException(
                    "is there already, and nothing was unpacked", place.toString(), "name a new or an empty folder");
        }
    }

    private static void checkRoom(SessionArchive packed, Path place) throws ProblemException {
        long needed = packed.files().stream().mapToLong(packed::size).sum();
        long free = DiskRoom.free(place);
        if (needed < 0 || needed > free) {
            throw new ProblemException(
                    "there is not enough room (" + megabytes(needed) + " MB are needed, " + megabytes(free)
                            + " MB are free)",
                    place.toString(),
                    "free some space, or name a folder on another disk");
        }
    }

    private static long megabytes(long bytes) {
        return (bytes + 999_999) / 1_000_000;
    }

    private void write(SessionArchive packed, Path place) throws IOException, ProblemException {
        List<String> all = packed.files();
        List<String> kept = packed.sessionFiles();
        CountedCopy copy = new CountedCopy(
                here, progress, stop, all.stream().mapToLong(packed::size).sum());
        for (String name : all) {
            if (!kept.contains(name)) {
                // The notes: they can be had from the journal, and would be out of date after the next take.
                check(packed, name, copy, OutputStream.nullOutputStream());
            }
        }
        Map<Path, Content> files = new LinkedHashMap<>();
        kept.forEach(name -> files.put(place.resolve(name), out -> check(packed, name, copy, out)));
        new AtomicFiles(Access.OWNER).writeAll(files);
    }

    private static void check(SessionArchive packed, String name, CountedCopy copy, OutputStream out)
            throws ProblemException, IOException {
        try (InputStream in = packed.content(name)) {
            if (!packed.sums().matches(name, copy.copy("unpacking " + name, in, packed.size(name), out))) {
                throw packed.damaged(name, new IOException("another sum"));
            }
        } catch (CountedCopy.UnreadableSource e) {
            throw packed.damaged(name, e.reason());
        }
    }

    /** Removes the folder if nothing came into it. */
    private static void tidy(Path place, boolean fresh) {
        try {
            if (fresh && Files.isDirectory(place) && isEmpty(place)) {
                Files.delete(place);
            }
        } catch (IOException e) {
            // An empty folder that is left does no harm.
        }
    }

    private static boolean isEmpty(Path folder) throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.findAny().isEmpty();
        }
    }
}
