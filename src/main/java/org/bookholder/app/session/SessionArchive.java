package org.bookholder.app.session;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import org.bookholder.journal.SessionFiles;
import org.bookholder.problem.ProblemException;

/**
 * An archive of a session: one folder with the session's files, the notes in two forms for people and other programs, and the
 * list of sums. Opening it checks everything that can be known before anything is unpacked.
 */
final class SessionArchive implements AutoCloseable {
    static final String NOTES_LIST = "notes.txt";
    static final String NOTES_JSON = "notes.json";

    private static final String REMEDY = "copy it once more from where it was packed, or pack the session again";
    private static final Pattern ROOT = Pattern.compile("[\\p{L}\\p{N}_-][\\p{L}\\p{N}._-]{0,119}");
    private static final Pattern UNUSUAL = Pattern.compile("[^\\p{L}\\p{N}._-]+");
    private static final int LONGEST_ROOT = 120;
    private static final int MOST_FILES = 10_000;

    /** Sound and journals may be large; no other file of a session is. */
    private static final long MOST_TEXT_BYTES = 64L << 20;

    private final Path archive;
    private final ZipFile zip;
    private final Map<String, ZipEntry> files = new LinkedHashMap<>();
    private String root = "";
    private Checksums sums = new Checksums();

    private SessionArchive(Path archive, ZipFile zip) {
        this.archive = archive;
        this.zip = zip;
    }

    /** The name of the archive's folder for a session in {@code folder}. */
    static String root(Path folder) {
        Path name = folder.toAbsolutePath().normalize().getFileName();
        String plain = UNUSUAL.matcher(name == null ? "" : name.toString()).replaceAll("-");
        String cut = plain.substring(0, Math.min(plain.length(), LONGEST_ROOT));
        String root = cut.startsWith(".") ? cut.substring(1) : cut;
        return ROOT.matcher(root).matches() ? root : "session";
    }

    /**
     * Opens an archive.
     *
     * @throws ProblemException if it is none of a session, is damaged, or holds anything else
     */
    static SessionArchive open(Path archive) throws ProblemException {
        if (!archive.toFile().isFile()) {
            throw new ProblemException("there is no such file", archive.toString(), "name an archive of a session");
        }
        try {
            SessionArchive opened = new SessionArchive(archive, new ZipFile(archive.toFile(), StandardCharsets.UTF_8));
            try {
                opened.look();
                return opened;
            } catch (ProblemException | RuntimeException e) {
                opened.close();
                throw e;
            }
        } catch (ZipException e) {
            throw new ProblemException("is damaged, or no ZIP archive", archive.toString(), REMEDY, e);
        } catch (IOException e) {
            throw new ProblemException(
                    "cannot be read", archive.toString(), "check that you may read it, and that it is whole", e);
        }
    }

    /** The name of the folder in it. */
    String root() {
        return root;
    }

    /** The names of the session's files, the journal last: once it is there, the folder is a session. */
    List<String> sessionFiles() {
        List<String> names = new ArrayList<>(files.keySet());
        names.removeIf(name -> !SessionFiles.belongs(name) || name.equals(SessionFiles.JOURNAL));
        names.add(SessionFiles.JOURNAL);
        return names;
    }

    /** The names of all files that have a sum. */
    List<String> files() {
        return List.copyOf(files.keySet());
    }

    Checksums sums() {
        return sums;
    }

    /** The size of a file when it is unpacked. */
    long size(String name) {
        return file(name).getSize();
    }

    /** The content of a file. */
    InputStream content(String name) throws ProblemException {
        try {
            return zip.getInputStream(file(name));
        } catch (IOException e) {
            throw damaged(name, e);
        }
    }

    /** The problem to report if a file is not what it was when it was packed. */
    ProblemException damaged(String name, IOException cause) {
        return new ProblemException(
                "the archive is damaged (" + name + " is not what was packed)", archive.toString(), REMEDY, cause);
    }

    @Override
    public void close() {
        try {
            zip.close();
        } catch (IOException e) {
            // It was only read.
        }
    }

    private ZipEntry file(String name) {
        ZipEntry entry = files.get(name);
        if (entry == null) {
            throw new IllegalArgumentException("name (" + name + ") must be one of " + files.keySet());
        }
        return entry;
    }

    private void look() throws ProblemException {
        if (zip.size() > MOST_FILES) {
            throw refused("it holds " + zip.size() + " files, which no session has");
        }
        for (ZipEntry entry : Collections.list(zip.entries())) {
            take(entry);
        }
        ZipEntry list = files.remove(Checksums.FILE);
        if (list == null || !files.containsKey(SessionFiles.JOURNAL)) {
            throw refused("it lacks " + (list == null ? Checksums.FILE : SessionFiles.JOURNAL));
        }
        sums = Checksums.read(text(list))
                .orElseThrow(() -> damaged(Checksums.FILE, new IOException("not a list of sums")));
        for (String name : sums.names()) {
            if (!files.containsKey(name)) {
                throw damaged(name, new IOException("it is missing"));
            }
        }
        for (String name : files.keySet()) {
            if (!sums.has(name)) {
                throw refused("'" + name + "' has no sum in " + Checksums.FILE);
            }
        }
    }

    /** Accepts a file of a session at its place, once; refuses everything else, such as a path that leads out of the folder. */
    private void take(ZipEntry entry) throws ProblemException {
        String path = entry.getName();
        int end = path.indexOf('/');
        String folder = end < 0 ? "" : path.substring(0, end);
        String name = path.substring(end + 1);
        boolean known = SessionFiles.belongs(name)
                || name.equals(NOTES_LIST)
                || name.equals(NOTES_JSON)
                || name.equals(Checksums.FILE);
        boolean sameRoot = root.isEmpty() || root.equals(folder);
        if (ROOT.matcher(folder).matches() && sameRoot && name.isEmpty()) {
            root = folder;
            return;
        }
        if (!ROOT.matcher(folder).matches() || !sameRoot || !known) {
            throw refused("it holds '" + shown(path) + "', which is no file of a session");
        }
        boolean large = name.equals(SessionFiles.JOURNAL) || SessionFiles.isSound(name);
        if (entry.getSize() < 0 || (!large && entry.getSize() > MOST_TEXT_BYTES)) {
            throw refused("its file " + name + " is too large");
        }
        root = folder;
        if (files.put(name, entry) != null) {
            throw refused("it holds " + name + " twice");
        }
    }

    private String text(ZipEntry entry) throws ProblemException {
        try (InputStream in = zip.getInputStream(entry)) {
            return new String(in.readNBytes((int) MOST_TEXT_BYTES), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw damaged(Checksums.FILE, e);
        }
    }

    private static String shown(String path) {
        String plain = path.replaceAll("\\p{C}", "?");
        return plain.length() <= LONGEST_ROOT ? plain : plain.substring(0, LONGEST_ROOT) + "...";
    }

    private ProblemException refused(String why) {
        return new ProblemException(
                "is no archive of a session (" + why + ")",
                archive.toString(),
                "name one that bookholder pack has written");
    }
}
