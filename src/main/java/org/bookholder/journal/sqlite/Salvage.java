package org.bookholder.journal.sqlite;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.bookholder.files.DiskProblems;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;

/**
 * What can still be read of a journal that is damaged, from every copy of every page of its file and its log.
 *
 * <p>SQLite's own means (the {@code .recover} command, sqlite.org/recovery.html) are not compiled into its library for Java; this
 * goes the same way. Journals make it easy: events are only ever added, in order, and never changed or deleted.
 *
 * @param events what can be read, in order
 * @param last the highest number that an event has
 * @param changed how many of the events have changed since they were written, with no copy left that has not
 */
public record Salvage(List<SessionEvent> events, long last, int changed) {
    /** Copies the list. */
    public Salvage {
        events = List.copyOf(events);
    }

    /** How many events are gone, as far as the numbers of the others tell. */
    public long gone() {
        return Math.max(0, last - events.size());
    }

    /**
     * Reads what can be read; changes nothing. A file that is missing holds nothing.
     *
     * @throws ProblemException if the disk refuses to be read
     */
    public static Salvage of(Path journal) throws ProblemException {
        try {
            return of(PageCopies.of(journal));
        } catch (IOException e) {
            throw DiskProblems.reading(journal, e);
        }
    }

    private static Salvage of(PageCopies pages) {
        CellReader reader = new CellReader(pages);
        Map<Long, EventCell> numbered = new HashMap<>();
        List<EventCell> alone = new ArrayList<>();
        for (PageCopies.Copy copy : pages.all()) {
            for (List<EventCell> row : rows(reader.cells(copy.bytes()))) {
                if (row.size() == 1) {
                    alone.addAll(row);
                } else {
                    counted(row).forEach(cell -> numbered.merge(cell.number(), cell, EventCell::better));
                }
            }
        }
        alone.sort(Comparator.comparing(EventCell::state));
        return inOrder(numbered, alone);
    }

    /** Cells that lie side by side. */
    private static List<List<EventCell>> rows(List<EventCell> cells) {
        List<List<EventCell>> rows = new ArrayList<>();
        for (int from = 0, to; from < cells.size(); from = to) {
            to = from + 1;
            while (to < cells.size() && touch(cells.get(to), cells.get(to - 1))) {
                to++;
            }
            rows.add(cells.subList(from, to));
        }
        return rows;
    }

    private static boolean touch(EventCell later, EventCell earlier) {
        return later.to() == earlier.from();
    }

    /** Cells that lie side by side have successive numbers: one that does not fit is damaged, and put right. */
    private static List<EventCell> counted(List<EventCell> row) {
        Map<Long, Integer> votes = new HashMap<>();
        for (int i = 0; i < row.size(); i++) {
            if (row.get(i).number() > i) {
                votes.merge(row.get(i).number() - i, 1, Integer::sum);
            }
        }
        long first = votes.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse(0L);
        List<EventCell> counted = new ArrayList<>();
        for (int i = 0; i < row.size(); i++) {
            counted.add(row.get(i).numbered(first > 0 ? first + i : row.get(i).number()));
        }
        return counted;
    }

    /**
     * The number of a cell that lies alone is believed only if it is free, or what has it has changed, and another copy of the event
     * was not found elsewhere; an event without a number goes where its time says.
     */
    private static Salvage inOrder(Map<Long, EventCell> numbered, List<EventCell> alone) {
        long possible = 4L * (numbered.size() + alone.size()) + 1000;
        TreeMap<Long, EventCell> kept = new TreeMap<>();
        List<EventCell> unplaced = new ArrayList<>();
        Set<SessionEvent> known = new HashSet<>();
        numbered.forEach((number, cell) -> {
            if (number >= 1 && number <= possible) {
                kept.put(number, cell);
                known.add(cell.event());
            } else {
                unplaced.add(cell);
            }
        });
        for (EventCell cell : alone) {
            boolean believed = cell.number() >= 1 && cell.number() <= possible;
            EventCell other = kept.get(cell.number());
            boolean free = believed && (other == null || (other.changed() && !cell.changed()));
            if (free && known.add(cell.event())) {
                kept.put(cell.number(), cell);
            } else if (!believed || !cell.changed()) {
                unplaced.add(cell);
            }
        }
        List<EventCell> cells = new ArrayList<>(kept.values());
        for (EventCell cell : unplaced) {
            if (known.add(cell.event())) {
                place(cell, cells);
            }
        }
        return new Salvage(
                cells.stream().map(EventCell::event).toList(),
                Math.max(cells.size(), kept.isEmpty() ? 0 : kept.lastKey()),
                (int) cells.stream().filter(EventCell::changed).count());
    }

    private static void place(EventCell cell, List<EventCell> cells) {
        int at = cells.size();
        while (at > 0 && cell.event().at().isBefore(cells.get(at - 1).event().at())) {
            at--;
        }
        cells.add(at, cell);
    }
}
