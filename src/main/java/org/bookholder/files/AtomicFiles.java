package org.bookholder.files;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.bookholder.problem.ProblemException;

/**
 * Writes files so that at any moment, even after a kill or a power cut, either the old file or the complete new one
 * exists.
 *
 * <p>The content is written to a temporary file in the same folder and forced to disk; then the temporary file is
 * renamed. If a step fails, the temporary file is removed and the old file is as it was. A kill may leave a temporary
 * file behind; its name begins with a dot and ends with {@code .part}.
 *
 * <p>Any thread may call it. If two threads write the same file, the later one wins.
 */
public final class AtomicFiles {
    private static final int LONGEST_NAME_PART = 60;

    private final FileOperations operations;
    private final Access access;

    /** Creates a writer on this machine's disk. */
    public AtomicFiles(Access access) {
        this(new Disk(), access);
    }

    /** Creates a writer with other operations. */
    public AtomicFiles(FileOperations operations, Access access) {
        this.operations = operations;
        this.access = access;
    }

    /**
     * Writes a text in UTF-8.
     *
     * @param file the file, in an existing folder; if it is a symbolic link, its target is replaced
     * @throws IOException if a step failed; then nothing is changed
     */
    public void write(Path file, String text) throws IOException {
        try {
            writeAll(Map.of(file, out -> out.write(text.getBytes(StandardCharsets.UTF_8))));
        } catch (ProblemException e) {
            throw new IllegalStateException("a text is written from memory", e);
        }
    }

    /**
     * Writes several files: all or none. They are renamed only once all are complete and on disk; if one cannot be
     * renamed, the others get their old content back.
     *
     * @param files the files, in existing folders, with their contents, in the order in which they are written
     * @throws IOException if a step failed; then nothing is changed
     * @throws ProblemException if the source of a content cannot be read; then nothing is changed
     */
    public void writeAll(Map<Path, Content> files) throws IOException, ProblemException {
        Map<Path, Path> drafts = new LinkedHashMap<>();
        try {
            for (Map.Entry<Path, Content> file : files.entrySet()) {
                Path target = followed(file.getKey());
                Path draft = beside(target, ".part");
                drafts.put(target, draft);
                writeDraft(draft, target, file.getValue());
            }
            replaceAll(drafts);
        } finally {
            drafts.values().forEach(this::discard);
        }
    }

    private void writeDraft(Path draft, Path target, Content content) throws IOException, ProblemException {
        Optional<Permissions> kept = access == Access.KEPT ? Permissions.of(target) : Optional.empty();
        // If the program is interrupted (Ctrl-C), no incomplete file stays behind.
        draft.toFile().deleteOnExit();
        try (OutputStream out =
                new BufferedOutputStream(operations.create(draft, kept.isPresent() ? Access.OWNER : access))) {
            content.write(out);
        }
        operations.force(draft);
        if (kept.isPresent()) {
            kept.get().give(draft);
        }
    }

    private void replaceAll(Map<Path, Path> drafts) throws IOException {
        Map<Path, Path> replaced = new LinkedHashMap<>();
        List<Path> done = new ArrayList<>();
        try {
            // A single file is replaced in one step; a way back is needed only for several.
            for (Path target : drafts.size() > 1 ? drafts.keySet() : Set.<Path>of()) {
                if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
                    Path old = beside(target, ".old.part");
                    replaced.put(target, old);
                    operations.keepAs(target, old);
                }
            }
            for (Map.Entry<Path, Path> draft : drafts.entrySet()) {
                operations.move(draft.getValue(), draft.getKey());
                done.add(draft.getKey());
            }
        } catch (IOException e) {
            undo(done, replaced, e);
            throw e;
        } finally {
            replaced.values().forEach(this::discard);
        }
        Set<Path> folders = new LinkedHashSet<>();
        drafts.keySet().forEach(target -> folders.add(folderOf(target)));
        for (Path folder : folders) {
            operations.forceFolder(folder);
        }
    }

    private void undo(List<Path> done, Map<Path, Path> replaced, IOException cause) {
        for (Path target : done) {
            try {
                Path old = replaced.get(target);
                if (old == null) {
                    operations.delete(target);
                } else {
                    operations.move(old, target);
                }
            } catch (IOException e) {
                cause.addSuppressed(e);
            }
        }
    }

    private void discard(Path file) {
        try {
            operations.delete(file);
        } catch (IOException e) {
            // The caller gets the earlier error; a temporary file left behind does no harm.
        }
    }

    private static Path followed(Path file) throws IOException {
        boolean leadsSomewhere = Files.isSymbolicLink(file) && Files.exists(file);
        return leadsSomewhere ? file.toRealPath() : file.toAbsolutePath();
    }

    private static Path folderOf(Path file) {
        Path folder = file.getParent();
        if (folder == null) {
            throw new IllegalArgumentException("file (" + file + ") must not be a root folder");
        }
        return folder;
    }

    /** A new name in the same folder; a long name is cut, since names have at most 255 bytes. */
    private static Path beside(Path file, String ending) {
        String name = String.valueOf(file.getFileName());
        String cut = name.substring(
                0, name.offsetByCodePoints(0, Math.min(LONGEST_NAME_PART, name.codePointCount(0, name.length()))));
        String number = Long.toHexString(new SecureRandom().nextLong());
        return folderOf(file).resolve("." + cut + "." + number + ending);
    }
}
