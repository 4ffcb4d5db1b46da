package org.bookholder.session;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.bookholder.follow.model.Attempt;
import org.bookholder.timing.StreamTime;
import org.pcollections.HashTreePMap;
import org.pcollections.HashTreePSet;
import org.pcollections.PMap;
import org.pcollections.PSet;
import org.pcollections.PVector;
import org.pcollections.TreePVector;

/**
 * The notes of all lines. Changing one costs the same in a script of any length.
 *
 * @param lines notes in script order
 * @param where for each take, the lines of its attempts by ordinal
 * @param begins for each take, the line at which it began; takes of the pickup round begin anywhere and are left out
 * @param furthest the last line that has an attempt, 0 if none has
 * @param leftOut lines that the voice jumped over in a take that is not settled yet
 */
record LineIndex(
        PVector<LineNotes> lines,
        PMap<Integer, PMap<Integer, Integer>> where,
        PMap<Integer, Integer> begins,
        int furthest,
        PSet<Integer> leftOut) {
    static LineIndex blank(int lines) {
        return new LineIndex(
                TreePVector.from(IntStream.rangeClosed(1, lines)
                        .mapToObj(LineNotes::unread)
                        .toList()),
                HashTreePMap.empty(),
                HashTreePMap.empty(),
                0,
                HashTreePSet.empty());
    }

    /**
     * Notes that a take begins at a line. Of the takes in which anything was read, the one that began first counts: lines before it were
     * not passed, and count as reached only if they have an attempt. The takes of the pickup round begin anywhere.
     */
    LineIndex begun(int take, int line, PickupRound round) {
        return round.isOn() ? this : new LineIndex(lines, where, begins.plus(take, line), furthest, leftOut);
    }

    /** The attempt with this take and ordinal, as a list; empty if there is none. */
    List<Attempt> attempt(int take, int ordinal) {
        Integer line = ordinals(where, take).get(ordinal);
        return line == null
                ? List.of()
                : lines.get(line - 1).attempts().stream()
                        .filter(a -> a.take() == take && a.ordinal() == ordinal)
                        .toList();
    }

    /** All attempts of a take, in no particular order. */
    List<Attempt> attempts(int take) {
        return ordinals(where, take).keySet().stream()
                .flatMap(o -> attempt(take, o).stream())
                .toList();
    }

    /** Adds an attempt; there must be none with the same take and ordinal. */
    LineIndex with(Attempt attempt) {
        int line = attempt.line();
        if (line < 1 || line > lines.size()) {
            throw new IllegalArgumentException("line (" + line + ") must be from 1 to " + lines.size());
        }
        return replaced(
                lines.with(line - 1, lines.get(line - 1).with(attempt)),
                where.plus(attempt.take(), ordinals(where, attempt.take()).plus(attempt.ordinal(), line)),
                Math.max(furthest, line),
                leftOut,
                Set.of(line));
    }

    /** Removes attempts, all of which must be present. */
    LineIndex without(Collection<Attempt> attempts) {
        PVector<LineNotes> notes = lines;
        PMap<Integer, PMap<Integer, Integer>> places = where;
        for (Attempt a : attempts) {
            notes = notes.with(a.line() - 1, notes.get(a.line() - 1).without(a.take(), a.ordinal()));
            places = places.plus(a.take(), ordinals(places, a.take()).minus(a.ordinal()));
        }
        int last = furthest;
        while (last > 0 && notes.get(last - 1).attempts().isEmpty()) {
            last--;
        }
        Set<Integer> changed = attempts.stream().map(Attempt::line).collect(Collectors.toSet());
        return replaced(notes, places, last, leftOut, changed);
    }

    /**
     * Notes that the voice jumped from one line to another. The lines between count as left out; after a jump back, the
     * lines from its target on are still to be read and no longer count as left out.
     */
    LineIndex jumped(int from, int to) {
        PSet<Integer> left = leftOut;
        for (Integer line : leftOut) {
            if (line >= to) {
                left = left.minus(line);
            }
        }
        for (int line = from; line < Math.min(to, lines.size() + 1); line++) {
            left = left.plus(line);
        }
        return replaced(lines, where, furthest, left, Set.of());
    }

    /** Forgets the lines left out; from now on only the attempts count. */
    LineIndex noneLeftOut() {
        return replaced(lines, where, furthest, HashTreePSet.empty(), Set.of());
    }

    /** Adds a mark; a mark past the last line belongs to the last line. */
    LineIndex marked(StreamTime at, int line, String note) {
        int index = Math.min(line, lines.size()) - 1;
        return new LineIndex(lines.with(index, lines.get(index).marked(at, note)), where, begins, furthest, leftOut);
    }

    /** The same with marks as they are after notes were removed or reworded. */
    LineIndex renoted(Remarks before, Remarks after) {
        PVector<LineNotes> changed = lines;
        for (Note note : before.notes()) {
            if (note.number() > 0 && note.pickup()) {
                int line = note.line();
                LineNotes old = changed.get(line - 1);
                LineNotes now = after.note(note.number())
                        .map(left -> old.remarked(note.text(), left.text()))
                        .orElseGet(() -> old.unmarked(note.text(), after.lastMark(line)));
                changed = changed.with(line - 1, now);
            }
        }
        return new LineIndex(changed, where, begins, furthest, leftOut);
    }

    /** The same notes for a changed script with {@code count} lines. */
    LineIndex renumbered(Renumbering change, int count) {
        LineIndex fresh = blank(count);
        PVector<LineNotes> notes = fresh.lines;
        PMap<Integer, PMap<Integer, Integer>> places = fresh.where;
        PMap<Integer, Integer> begun = begins;
        for (Map.Entry<Integer, Integer> begin : begins.entrySet()) {
            // What was begun at the top is begun at the new top.
            begun = begun.plus(begin.getKey(), begin.getValue() == 1 ? 1 : change.place(begin.getValue()));
        }
        int last = 0;
        for (LineNotes old : lines) {
            int line = change.line(old.line());
            if (line > 0) {
                LineNotes moved = old.movedTo(line);
                notes = notes.with(line - 1, moved);
                for (Attempt a : moved.attempts()) {
                    places = places.plus(a.take(), ordinals(places, a.take()).plus(a.ordinal(), line));
                }
                last = moved.attempts().isEmpty() ? last : line;
            }
        }
        PSet<Integer> left = HashTreePSet.empty();
        for (Integer line : leftOut) {
            left = change.line(line) > 0 ? left.plus(change.line(line)) : left;
        }
        return new LineIndex(notes, places, begun, last, left).counted();
    }

    /** The same with each line counted anew as reached or not. */
    private LineIndex counted() {
        PVector<LineNotes> notes = lines;
        int first = first(where);
        for (int line = 1; line <= notes.size(); line++) {
            notes = notes.with(line - 1, notes.get(line - 1).reached(passed(notes, line, first, furthest, leftOut)));
        }
        return new LineIndex(notes, where, begins, furthest, leftOut);
    }

    /** The first line at which a take began in which anything was read; 1 if there is none. */
    private int first(PMap<Integer, PMap<Integer, Integer>> places) {
        return begins.entrySet().stream()
                .filter(begin -> !ordinals(places, begin.getKey()).isEmpty())
                .mapToInt(Map.Entry::getValue)
                .min()
                .orElse(1);
    }

    private static boolean passed(PVector<LineNotes> notes, int line, int first, int last, PSet<Integer> left) {
        boolean within = line >= first && line <= last;
        return within || left.contains(line) || !notes.get(line - 1).attempts().isEmpty();
    }

    private LineIndex replaced(
            PVector<LineNotes> notes,
            PMap<Integer, PMap<Integer, Integer>> places,
            int nowFurthest,
            PSet<Integer> nowLeftOut,
            Set<Integer> tried) {
        int first = first(places);
        Set<Integer> changed = new HashSet<>(tried);
        changed.addAll(leftOut);
        changed.addAll(nowLeftOut);
        addBetween(changed, furthest, nowFurthest);
        addBetween(changed, first(where) - 1, first - 1);
        PVector<LineNotes> reached = notes;
        for (int line : changed) {
            boolean now = passed(reached, line, first, nowFurthest, nowLeftOut);
            reached = reached.with(line - 1, reached.get(line - 1).reached(now));
        }
        return new LineIndex(reached, places, begins, nowFurthest, nowLeftOut);
    }

    /** Adds the lines behind the one up to the other, whichever is earlier. */
    private static void addBetween(Set<Integer> lines, int one, int other) {
        for (int line = Math.min(one, other) + 1; line <= Math.max(one, other); line++) {
            lines.add(line);
        }
    }

    private static PMap<Integer, Integer> ordinals(PMap<Integer, PMap<Integer, Integer>> places, int take) {
        PMap<Integer, Integer> ordinals = places.get(take);
        return ordinals == null ? HashTreePMap.empty() : ordinals;
    }
}
