package org.bookholder.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Random;
import org.bookholder.journal.event.EventCodec;
import org.bookholder.journal.sqlite.SqliteJournal;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.Histories;
import org.bookholder.testing.Readings;
import org.bookholder.timing.StreamTime;

/**
 * A journal to be damaged, twice: as a session that was closed leaves it, and as one that was killed, with most of it in the
 * write-ahead log.
 *
 * @param closed the folder of the one
 * @param killed the folder of the other
 * @param texts its events as they are written, in order; no two are the same
 * @param inClosed where the texts stand in the one
 * @param inKilled where they stand in the other
 */
record KeptJournal(Path closed, Path killed, List<String> texts, StoredTexts inClosed, StoredTexts inKilled) {
    private static final int EVENTS = 1_000;
    private static final int LONG_TEXT_LINES = 150;

    /** Keeps a history that the seed chooses, in folders in {@code parent}. */
    static KeptJournal of(Path parent, long seed) throws IOException, ProblemException {
        Random random = new Random(seed);
        Path closed = Files.createDirectories(parent.resolve("closed-" + seed));
        Path killed = Files.createDirectories(parent.resolve("killed-" + seed));
        List<SessionEvent> events = history(random);
        try (SqliteJournal open = SqliteJournal.open(closed.resolve("journal.db"))) {
            for (SessionEvent event : events) {
                open.append(event);
            }
            copy(closed, killed);
        }
        List<String> texts = events.stream().map(EventCodec::encode).toList();
        return new KeptJournal(closed, killed, texts, StoredTexts.in(closed, texts), StoredTexts.in(killed, texts));
    }

    /** Where the texts stand in one of the two. */
    StoredTexts stored(boolean broken) {
        return broken ? inKilled : inClosed;
    }

    /** Copies one of the two to a new folder. */
    void copy(boolean broken, Path folder) throws IOException {
        copy(broken ? killed : closed, Files.createDirectories(folder));
    }

    private static void copy(Path from, Path to) throws IOException {
        for (String name : List.of("journal.db", "journal.db-wal")) {
            if (Files.exists(from.resolve(name))) {
                Files.copy(from.resolve(name), to.resolve(name));
            }
        }
    }

    /** Events of every kind, with two texts that are many pages long. */
    private static List<SessionEvent> history(Random random) {
        List<SessionEvent> events = new ArrayList<>();
        events.add(opened(StreamTime.ZERO, 0));
        for (SessionEvent event :
                Histories.of(random.ints(EVENTS, 0, 10_000).boxed().toList())) {
            events.add(event instanceof SessionEvent.Opened again ? opened(again.at(), events.size()) : event);
        }
        int middle = EVENTS / 3;
        events.add(middle, new SessionEvent.TextChanged(events.get(middle - 1).at(), script(middle)));
        return List.copyOf(new LinkedHashSet<>(events));
    }

    private static SessionEvent opened(StreamTime at, int number) {
        return new SessionEvent.Opened(
                at,
                Readings.MORNING.plus(at.toDuration()),
                Histories.SCRIPT.title(),
                Histories.SCRIPT.source(),
                script(number));
    }

    /** The script of the history, with many directions that no other text has. */
    private static String script(int number) {
        StringBuilder text = new StringBuilder();
        Histories.SCRIPT
                .lines()
                .forEach(line -> text.append(String.join(
                                " ",
                                line.words().stream().map(ScriptWord::written).toList()))
                        .append("\n"));
        for (int i = 0; i < LONG_TEXT_LINES; i++) {
            text.append("\n> Direction ").append(number + "." + i).append(": turn to the other camera.\n");
        }
        return text.toString();
    }
}
