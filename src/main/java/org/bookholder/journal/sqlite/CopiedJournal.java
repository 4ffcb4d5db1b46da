package org.bookholder.journal.sqlite;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.journal.event.Journal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;

/** A journal that is read from a temporary copy, which goes when it is closed. Problems name the journal itself. */
final class CopiedJournal implements Journal {
    private final Path original;
    private final ReadableCopy copy;
    private final Journal read;

    private CopiedJournal(Path original, ReadableCopy copy, Journal read) {
        this.original = original;
        this.copy = copy;
        this.read = read;
    }

    /** Reads {@code copy} in place of {@code original}. */
    static Journal of(Path original, ReadableCopy copy) throws ProblemException {
        try {
            return new CopiedJournal(original, copy, SqliteJournal.openInPlace(copy.file()));
        } catch (ProblemException e) {
            copy.discard();
            throw renamed(original, e);
        }
    }

    @Override
    public void append(List<SessionEvent> events) throws ProblemException {
        throw new ProblemException(
                "cannot be written", original.toString(), "copy the session to a place that can be written");
    }

    @Override
    public List<SessionEvent> events() throws ProblemException {
        try {
            return read.events();
        } catch (ProblemException e) {
            throw renamed(original, e);
        }
    }

    @Override
    public Optional<ProblemException> damage() {
        return read.damage()
                .map(damage -> new ProblemException(
                        damage.what(),
                        original.toString(),
                        "copy the session to a place that can be written, and run 'bookholder repair' there",
                        damage));
    }

    @Override
    public void close() {
        read.close();
        copy.discard();
    }

    private static ProblemException renamed(Path original, ProblemException problem) {
        return new ProblemException(problem.what(), original.toString(), problem.remedy(), problem);
    }
}
