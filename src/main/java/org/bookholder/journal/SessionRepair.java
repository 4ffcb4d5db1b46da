package org.bookholder.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.files.Disk;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.PrivateFiles;
import org.bookholder.journal.EventMender.Mended;
import org.bookholder.journal.sqlite.Salvage;
import org.bookholder.journal.sqlite.SqliteJournal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.speech.wav.WavHeader;

/**
 * Repairs a session: keeps a copy of its small files, writes a new journal with all that can be read of the old one, and puts
 * back the headers of recordings. Until the new journal takes the place of the old one, nothing is changed.
 */
public final class SessionRepair {
    private final Path folder;
    private final Path copies;
    private final Disk disk = new Disk();

    private SessionRepair(Path folder, Path copies) {
        this.folder = folder;
        this.copies = copies;
    }

    /**
     * What a repair did.
     *
     * @param copies where the files as they were are kept; empty if nothing had to be repaired
     * @param saved how many entries the journal has now
     * @param gone how many are known to be gone
     * @param changed how many have changed since they were written, with no copy left that has not; they are kept as they are now
     * @param scriptCopied whether the script had to be taken from its copy in the folder
     * @param takesPutBack takes whose beginning was gone, and was put back by their recording or by what else is known
     * @param headers recordings whose header was written anew
     * @param lost what cannot be saved, a sentence each
     */
    public record Report(
            Optional<Path> copies,
            int saved,
            long gone,
            int changed,
            boolean scriptCopied,
            List<Integer> takesPutBack,
            List<Path> headers,
            List<String> lost) {
        /** Copies the lists. */
        public Report {
            takesPutBack = List.copyOf(takesPutBack);
            headers = List.copyOf(headers);
            lost = List.copyOf(lost);
        }
    }

    /**
     * Repairs a session, unless nothing is damaged.
     *
     * @param folder the session's folder
     * @param copies a folder that does not exist, for the files as they were
     * @throws ProblemException if there is no session, it is open elsewhere or of a newer version, or the folder cannot be
     *     written; nothing is changed then
     */
    public static Report repair(Path folder, Path copies, SessionLocks locks) throws ProblemException {
        SessionRepair repair = new SessionRepair(folder, copies);
        if (!Files.exists(repair.journal()) && repair.recordings().isEmpty()) {
            throw new ProblemException(
                    Files.exists(folder) ? "holds no session" : "there is no such folder",
                    folder.toString(),
                    "name the folder of a session");
        }
        FolderLock lock = FolderLock.take(folder, locks);
        try {
            return repair.repair();
        } finally {
            lock.close();
        }
    }

    private Report repair() throws ProblemException {
        Salvage salvage = Salvage.of(journal());
        Optional<List<SessionEvent>> sound = soundEvents(salvage);
        Mended mended = EventMender.mend(folder, sound.orElse(salvage.events()));
        boolean journalIsWhole = sound.isPresent() && mended.events().equals(sound.get());
        TakeHeaders headers = TakeHeaders.of(mended.events(), recordings());
        if (journalIsWhole && headers.damaged().isEmpty()) {
            return new Report(
                    Optional.empty(), mended.events().size(), 0, 0, false, List.of(), List.of(), headers.lost());
        }
        if (Replay.firstOpened(mended.events()).isEmpty()) {
            throw new ProblemException(
                    "its script is gone, and with it the meaning of all notes",
                    folder.toString(),
                    "put the script there as script.md and repair it again; its recordings can be played as they are");
        }
        try {
            copy(headers);
            if (!journalIsWhole) {
                replaceJournal(mended.events());
            }
        } catch (ProblemException e) {
            discard(copies);
            throw e;
        }
        headers.write();
        return new Report(
                Optional.of(copies),
                mended.events().size(),
                (sound.isPresent() ? 0 : salvage.gone()) + mended.unfitting(),
                sound.isPresent() ? 0 : salvage.changed(),
                mended.scriptCopied(),
                mended.takesPutBack(),
                List.copyOf(headers.damaged().keySet()),
                headers.lost());
    }

    /** What SQLite reads of a journal, if that is all there is and the file is as it should be. */
    private Optional<List<SessionEvent>> soundEvents(Salvage salvage) throws ProblemException {
        if (!Files.exists(journal())) {
            return Optional.empty();
        }
        return SqliteJournal.soundEvents(journal())
                .filter(events -> events.size() >= salvage.events().size());
    }

    private void copy(TakeHeaders headers) throws ProblemException {
        try {
            PrivateFiles.createFolder(copies);
            for (Path file : SessionFiles.in(folder)) {
                if (!SessionFolder.isTake(file) && !FolderLock.isLockFile(file)) {
                    PrivateFiles.copy(file, copies.resolve(file.getFileName()));
                }
            }
            headers.keep(copies);
        } catch (IOException e) {
            throw DiskProblems.writing(copies, e);
        }
    }

    private void replaceJournal(List<SessionEvent> events) throws ProblemException {
        Path made = folder.resolve("journal.db.repaired");
        try {
            discardJournal(made);
            try (SqliteJournal journal = SqliteJournal.open(made)) {
                journal.append(events);
            }
            // The log first: SQLite would take it for the new journal's.
            disk.delete(besideJournal("-wal"));
            disk.delete(besideJournal("-shm"));
            disk.move(made, journal());
            disk.forceFolder(folder);
        } catch (IOException e) {
            throw DiskProblems.writing(made, e);
        } finally {
            discardJournal(made);
        }
    }

    private void discardJournal(Path file) {
        for (String ending : List.of("", "-wal", "-shm")) {
            try {
                disk.delete(file.resolveSibling(file.getFileName() + ending));
            } catch (IOException e) {
                // What is in the way is told when the new journal cannot be written.
            }
        }
    }

    private void discard(Path place) {
        try (Stream<Path> files = Files.list(place)) {
            for (Path file : files.toList()) {
                disk.delete(file);
            }
            disk.delete(place);
        } catch (IOException e) {
            // The caller is told what went wrong before; a copy too many does no harm.
        }
    }

    private List<Path> recordings() throws ProblemException {
        return Files.isDirectory(folder)
                ? SessionFiles.in(folder).stream()
                        .filter(SessionFolder::isTake)
                        .filter(file -> file.toFile().length() > WavHeader.BYTES)
                        .toList()
                : List.of();
    }

    private Path journal() {
        return SessionFolder.journalOf(folder);
    }

    private Path besideJournal(String ending) {
        return folder.resolve(journal().getFileName() + ending);
    }
}
