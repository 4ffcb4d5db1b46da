package org.bookholder.app.session;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.files.DiskProblems;
import org.bookholder.journal.FolderLock;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionSummary;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;

/** The sessions that are kept in some places, how much room they take, and the removal of those that are not needed any more. */
public final class SessionStorage {
    private final Environment here;

    public SessionStorage(Environment here) {
        this.here = here;
    }

    /**
     * A session that is kept.
     *
     * @param summary what it is
     * @param bytes the room that it takes
     */
    public record Kept(SessionSummary summary, long bytes) {}

    /**
     * The sessions in these places, the oldest first within each.
     *
     * @throws ProblemException if one of the places can't be read
     */
    public List<Kept> list(List<Path> places) throws ProblemException {
        List<Kept> kept = new ArrayList<>();
        for (Path folder : SessionFolders.folders(places)) {
            kept.add(new Kept(SessionFolder.summary(folder, here.locks()), bytes(folder)));
        }
        return kept;
    }

    private static long bytes(Path folder) throws ProblemException {
        Sizes sizes = new Sizes();
        try {
            Files.walkFileTree(folder, sizes);
            return sizes.sum;
        } catch (IOException e) {
            throw DiskProblems.reading(folder, e);
        }
    }

    /** Adds up the sizes of files; one that is gone meanwhile has none. */
    private static final class Sizes extends SimpleFileVisitor<Path> {
        private long sum;

        @Override
        public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
            sum += attributes.size();
            return FileVisitResult.CONTINUE;
        }

        @Override
        public FileVisitResult visitFileFailed(Path file, IOException gone) {
            return FileVisitResult.CONTINUE;
        }
    }

    /**
     * Removes a session with its sound and notes for good.
     *
     * @param places where sessions are kept; none elsewhere is removed
     * @throws ProblemException if there is no such session, it is open somewhere, or it can't be removed as a whole
     */
    public void remove(Path folder, List<Path> places) throws ProblemException {
        Path wanted = folder.toAbsolutePath().normalize();
        if (!SessionFolders.folders(places).contains(wanted)) {
            throw new ProblemException(
                    "there is no such session any more", folder.toString(), "look at the list again");
        }
        try {
            Optional<FolderLock> lock = FolderLock.tryTake(wanted, here.locks());
            if (lock.isEmpty()) {
                throw new ProblemException("this session is open", folder.toString(), "close it first");
            }
            try (FolderLock held = lock.get()) {
                removeInside(wanted, held);
            }
            // The lock's own file is open until here, which Windows does not remove.
            Files.walkFileTree(wanted, new Remover());
        } catch (IOException e) {
            throw DiskProblems.writing(folder, e);
        }
    }

    /** Removes all but the lock while it is held, so that nobody opens what is being removed. */
    private static void removeInside(Path folder, FolderLock held) throws IOException {
        Files.walkFileTree(folder, new Remover() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                return held.isFile(file) ? FileVisitResult.CONTINUE : super.visitFile(file, attributes);
            }

            @Override
            public FileVisitResult postVisitDirectory(Path inner, @Nullable IOException failed) throws IOException {
                return inner.equals(folder) ? FileVisitResult.CONTINUE : super.postVisitDirectory(inner, failed);
            }
        });
    }

    /** Removes files and folders; a link is removed, not what it leads to. */
    private static class Remover extends SimpleFileVisitor<Path> {
        @Override
        public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
            Files.delete(file);
            return FileVisitResult.CONTINUE;
        }

        @Override
        public FileVisitResult postVisitDirectory(Path folder, @Nullable IOException failed) throws IOException {
            Files.delete(folder);
            return FileVisitResult.CONTINUE;
        }
    }
}
