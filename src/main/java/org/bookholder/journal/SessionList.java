package org.bookholder.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.files.DiskProblems;
import org.bookholder.journal.SessionSummary.Standing;
import org.bookholder.journal.sqlite.SqliteJournal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;

/** Summarises the sessions in a folder. */
final class SessionList {
    private static final Comparator<SessionSummary> OLDEST_FIRST = Comparator.comparing(
                    (SessionSummary s) -> s.began().orElse(Instant.MAX))
            .thenComparing(SessionSummary::folder);

    private SessionList() {}

    static List<SessionSummary> of(Path parent, SessionLocks locks) throws ProblemException {
        if (!Files.exists(parent)) {
            return List.of();
        }
        List<SessionSummary> sessions = new ArrayList<>();
        try (Stream<Path> entries = Files.list(parent)) {
            entries.filter(SessionFolder::isSession)
                    .map(folder -> summary(folder, locks))
                    .forEach(sessions::add);
        } catch (IOException e) {
            throw DiskProblems.reading(parent, e);
        }
        sessions.sort(OLDEST_FIRST);
        return List.copyOf(sessions);
    }

    static SessionSummary summary(Path folder, SessionLocks locks) {
        try (SessionFolder session = SessionFolder.openForReading(folder)) {
            List<SessionEvent> events = session.events();
            return summary(
                    folder, events, session.damage().map(ProblemException::what).orElse(""), locks);
        } catch (ProblemException e) {
            return new SessionSummary(folder, "", Optional.empty(), 0, StreamTime.ZERO, Standing.UNREADABLE, e.what());
        }
    }

    private static SessionSummary summary(Path folder, List<SessionEvent> events, String damage, SessionLocks locks) {
        String title = "";
        Optional<Instant> began = Optional.empty();
        StreamTime length = StreamTime.ZERO;
        int takes = 0;
        boolean rolling = false;
        for (SessionEvent event : events) {
            length = StreamTime.max(length, event.at());
            if (event instanceof SessionEvent.Opened opened) {
                title = opened.title();
                began = began.or(() -> Optional.of(opened.when()));
                rolling = false;
            } else if (event instanceof SessionEvent.TakeStarted) {
                takes++;
                rolling = true;
            } else if (event instanceof SessionEvent.TakeEnded) {
                rolling = false;
            }
        }
        return new SessionSummary(
                folder, title, began, takes, length, standing(folder, events.isEmpty(), rolling, locks), damage);
    }

    private static Standing standing(Path folder, boolean empty, boolean rolling, SessionLocks locks) {
        if (FolderLock.isTaken(folder, locks)) {
            return Standing.OPEN;
        }
        if (empty) {
            return Standing.EMPTY;
        }
        boolean killed = rolling || SqliteJournal.wasKilled(SessionFolder.journalOf(folder));
        return killed ? Standing.BROKEN_OFF : Standing.FINISHED;
    }
}
