package org.bookholder.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.journal.SessionRepair;
import org.bookholder.journal.event.EventCodec;
import org.bookholder.problem.ProblemException;

/**
 * A session whose journal is damaged in a way that is known, and repaired: what was still whole in its files, and what came back.
 *
 * <p>How journals come to be damaged is told by SQLite itself: "How To Corrupt An SQLite Database File"
 * (sqlite.org/howtocorrupt.html: a log that is deleted or does not belong, disks that lose or change what was written), "Atomic
 * Commit In SQLite" (sqlite.org/atomiccommit.html: writes that stop anywhere), and what can be expected back by "Recovering Data
 * From A Corrupt SQLite Database" (sqlite.org/recovery.html).
 */
final class DamagedJournal {
    private final KeptJournal origin;
    private final Path folder;
    private final Random random;

    /** A copy of {@code origin} that will lie in {@code folder}; the same seed makes the same damage. */
    DamagedJournal(KeptJournal origin, Path folder, long seed) {
        this.origin = origin;
        this.folder = folder;
        this.random = new Random(seed);
    }

    /** What happens to a journal. */
    enum Damage {
        /** The file or the log of a session ends somewhere. */
        CUT,
        /** Bytes of the file or the log have changed, 1 to 20 of them. */
        FLIPPED,
        /** The log of a session that was killed is gone. */
        LOG_REMOVED,
        /** A stretch of the log of a session that was killed is overwritten, perhaps its header. */
        LOG_DAMAGED
    }

    /**
     * What a repair brought back.
     *
     * @param events how many events there were
     * @param whole how many were still whole in the damaged files
     * @param back how many of those the repaired journal has, in their order
     * @param changed how many events the repaired journal has that never were
     * @param told of how many events the repair says that they have changed
     * @param refused whether the repair was refused
     */
    record Outcome(int events, int whole, int back, int changed, int told, boolean refused) {}

    /** Copies the session, damages it, repairs it and counts. */
    Outcome repair(Damage damage) throws IOException, ProblemException {
        boolean killed = damage == Damage.LOG_REMOVED || damage == Damage.LOG_DAMAGED || random.nextBoolean();
        origin.copy(killed, folder);
        damage(damage);
        Set<String> whole = origin.stored(killed).wholeIn(folder);
        try {
            SessionRepair.Report report = SessionRepair.repair(folder, folder.resolve("before"), new SessionLocks());
            return compare(whole, report.changed());
        } catch (ProblemException e) {
            return new Outcome(origin.texts().size(), whole.size(), 0, 0, 0, true);
        }
    }

    private Outcome compare(Set<String> whole, int told) throws ProblemException {
        List<String> found = new ArrayList<>();
        try (SessionFolder session = SessionFolder.openForReading(folder)) {
            session.journal().events().forEach(event -> found.add(EventCodec.encode(event)));
            if (session.damage().isPresent()) {
                throw new IllegalStateException(String.valueOf(session.damage()));
            }
        }
        int changed = 0;
        List<Integer> order = new ArrayList<>();
        Map<String, Integer> places = new HashMap<>();
        origin.texts().forEach(text -> places.put(text, places.size()));
        for (String text : found) {
            if (!places.containsKey(text)) {
                // A repair may add the beginning of a take again: it is neither an old event nor a changed one.
                changed += text.contains("\"take-started\"") || text.contains("\"opened\"") ? 0 : 1;
            } else if (whole.contains(text)) {
                order.add(places.get(text));
            }
        }
        return new Outcome(origin.texts().size(), whole.size(), inOrder(order), changed, told, false);
    }

    /** The length of the longest increasing subsequence. */
    private static int inOrder(List<Integer> numbers) {
        TreeSet<Integer> ends = new TreeSet<>();
        for (int number : numbers) {
            Integer replaced = ends.ceiling(number);
            if (replaced != null) {
                ends.remove(replaced);
            }
            ends.add(number);
        }
        return ends.size();
    }

    private void damage(Damage damage) throws IOException {
        Path file = folder.resolve("journal.db");
        Path log = folder.resolve("journal.db-wal");
        Path either = Files.exists(log) && random.nextBoolean() ? log : file;
        switch (damage) {
            case CUT -> {
                byte[] bytes = Files.readAllBytes(either);
                Files.write(either, Arrays.copyOf(bytes, random.nextInt(bytes.length)));
            }
            case FLIPPED -> {
                byte[] bytes = Files.readAllBytes(either);
                for (int i = random.nextInt(20); i >= 0; i--) {
                    bytes[random.nextInt(bytes.length)] ^= (byte) (1 + random.nextInt(255));
                }
                Files.write(either, bytes);
            }
            case LOG_REMOVED -> Files.delete(log);
            case LOG_DAMAGED -> {
                byte[] bytes = Files.readAllBytes(log);
                int from = random.nextBoolean() ? 0 : random.nextInt(bytes.length - StoredTexts.PAGE);
                Arrays.fill(bytes, from, from + StoredTexts.PAGE, (byte) random.nextInt(256));
                Files.write(log, bytes);
            }
        }
    }
}
