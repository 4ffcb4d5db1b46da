package org.bookholder.app.session;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.Progress;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.PrivateFiles;
import org.bookholder.handoff.Exporter;
import org.bookholder.handoff.NotesJsonExporter;
import org.bookholder.handoff.PickupListExporter;
import org.bookholder.journal.SessionFiles;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;

/**
 * Packs a stored session into one ZIP archive, with the SHA-256 sum of each file. The archive is written whole or not at all.
 * {@link SessionUnpacking} opens it; so does any other program that opens ZIP archives.
 */
public final class SessionPacking {
    private final Environment here;
    private final Consumer<Progress> progress;
    private final Interruption stop;

    /** Packs with this progress, until it is stopped. */
    public SessionPacking(Environment here, Consumer<Progress> progress, Interruption stop) {
        this.here = here;
        this.progress = progress;
        this.stop = stop;
    }

    /**
     * What was packed.
     *
     * @param files number of files, the list of sums left out
     * @param bytes size of the archive
     */
    public record Packed(int files, long bytes) {}

    /** A file to be packed: its name in the session's folder, and its content. */
    private record Part(String name, Path file, long bytes) {}

    private record Notes(String name, Exporter exporter) {}

    /**
     * Writes the archive.
     *
     * @param replace whether an existing file may be replaced
     * @throws ProblemException if the session is open elsewhere or cannot be read, or the archive cannot be written; nothing is
     *     changed then
     */
    public Packed pack(Path place, Path archive, boolean replace) throws ProblemException {
        if (Files.exists(archive) && (!replace || Files.isDirectory(archive))) {
            throw new ProblemException(
                    "is there already, and nothing was written",
                    archive.toString(),
                    Files.isDirectory(archive) ? "name a file in it" : "name another file, or add --replace");
        }
        try (SessionFolder folder = hold(place);
                StoredSession session = StoredSession.open(here, folder.path())) {
            Path journal = beside(archive);
            try {
                PrivateFiles.createIfMissing(journal);
                journal.toFile().deleteOnExit();
                SessionFiles.copyJournal(place, journal);
                List<Part> parts = parts(place, journal);
                new AtomicFiles(Access.OWNER).writeAll(Map.of(archive, out -> write(session, parts, out)));
                return new Packed(parts.size() + notes().size(), Files.size(archive));
            } finally {
                Files.deleteIfExists(journal);
            }
        } catch (IOException e) {
            throw DiskProblems.writing(archive, e);
        }
    }

    /** Keeps others from changing the session meanwhile; on a place that is read-only, nobody can. */
    private SessionFolder hold(Path place) throws ProblemException {
        return Files.isDirectory(place) && !Files.isWritable(place)
                ? SessionFolder.openForReading(place)
                : SessionFolder.open(place, here.locks());
    }

    private static Path beside(Path archive) {
        String number = Long.toHexString(new SecureRandom().nextLong());
        return archive.toAbsolutePath().resolveSibling(".journal." + number + ".part");
    }

    private static List<Part> parts(Path place, Path journal) throws ProblemException, IOException {
        List<Part> parts = new ArrayList<>();
        parts.add(new Part(SessionFiles.JOURNAL, journal, Files.size(journal)));
        for (Path file : SessionFiles.besideJournal(place)) {
            parts.add(new Part(String.valueOf(file.getFileName()), file, Files.size(file)));
        }
        return parts;
    }

    /** The notes for people, and for other programs; not needed to open the session again. */
    private List<Notes> notes() {
        return List.of(
                new Notes(SessionArchive.NOTES_LIST, new PickupListExporter(here.zone())),
                new Notes(SessionArchive.NOTES_JSON, new NotesJsonExporter()));
    }

    private void write(StoredSession session, List<Part> parts, OutputStream out) throws IOException, ProblemException {
        String root = SessionArchive.root(session.folder().path());
        long total = parts.stream().mapToLong(Part::bytes).sum();
        CountedCopy copy = new CountedCopy(here, progress, stop, total);
        Checksums sums = new Checksums();
        // Not closed: the stream below belongs to the caller.
        ZipOutputStream zip = new ZipOutputStream(out, StandardCharsets.UTF_8);
        zip.setLevel(Deflater.BEST_SPEED);
        for (Part part : parts) {
            ZipEntry entry = new ZipEntry(root + "/" + part.name());
            zip.putNextEntry(entry);
            add(part, copy, sums, zip);
            zip.closeEntry();
        }
        for (Notes notes : notes()) {
            StringBuilder text = new StringBuilder();
            notes.exporter().write(session.state(), session.events(), text);
            add(root, notes.name(), text.toString(), sums, zip);
        }
        add(root, Checksums.FILE, sums.text(), new Checksums(), zip);
        zip.finish();
    }

    private static void add(Part part, CountedCopy copy, Checksums sums, OutputStream zip)
            throws IOException, ProblemException {
        try (InputStream from = open(part.file())) {
            sums.add(part.name(), copy.copy("packing " + part.name(), from, Long.MAX_VALUE, zip));
        } catch (CountedCopy.UnreadableSource e) {
            throw DiskProblems.reading(part.file(), e.reason());
        }
    }

    private static InputStream open(Path file) throws ProblemException {
        try {
            return Files.newInputStream(file);
        } catch (IOException e) {
            throw DiskProblems.reading(file, e);
        }
    }

    private static void add(String root, String name, String text, Checksums sums, ZipOutputStream zip)
            throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        zip.putNextEntry(new ZipEntry(root + "/" + name));
        zip.write(bytes);
        zip.closeEntry();
        MessageDigest digest = Checksums.digest();
        digest.update(bytes);
        sums.add(name, digest);
    }
}
