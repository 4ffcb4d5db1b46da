package org.bookholder.session;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
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
 * The notes of all lines, kept so that changing one costs the same in a script of any length.
 *
 * @param lines notes in script order
 * @param where for each take the lines of its attempts, by ordinal
 * @param furthest the last line that has an attempt, 0 if none has
 * @param leftOut lines that the voice jumped over, for as long as their take has not settled
 */
record LineIndex(
        PVector<LineNotes> lines, PMap<Integer, PMap<Integer, Integer>> where, int furthest, PSet<Integer> leftOut) {
    static LineIndex blank(int lines) {
        return new LineIndex(
                TreePVector.from(IntStream.rangeClosed(1, lines)
                        .mapToObj(LineNotes::unread)
                        .toList()),
                HashTreePMap.empty(),
                0,
                HashTreePSet.empty());
    }

    /** The attempt known under this take and ordinal, or an empty list. */
    List<Attempt> attempt(int take, int ordinal) {
        Integer line = ordinals(where, take).get(ordinal);
        return line == null
                ? List.of()
                : lines.get(line - 1).attempts().stream()
                        .filter(a -> a.take() == take && a.ordinal() == ordinal)
                        .toList();
    }

    /** All attempts of a take, in no certain order. */
    List<Attempt> attempts(int take) {
        return ordinals(where, take).keySet().stream()
                .flatMap(o -> attempt(take, o).stream())
                .toList();
    }

    /** With an attempt of which none is known under the same take and ordinal. */
    LineIndex with(Attempt attempt) {
        int line = attempt.line();
        if (line < 1 || line > lines.size()) {
            throw new IllegalArgumentException("line (" + line + ") must be from 1 to " + lines.size());
        }
        return replaced(
                lines.with(line - 1, lines.get(line - 1).with(attempt)),
                where.plus(attempt.take(), ordinals(where, attempt.take()).plus(attempt.ordinal(), line)),
                Math.max(furthest, line),
                leftOut);
    }

    /** Without attempts that are known. */
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
        return replaced(notes, places, last, leftOut);
    }

    /**
     * With the voice having jumped from one line to another: those between were left out, and after a jump back those
     * from its goal on are yet to be read.
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
        return replaced(lines, where, furthest, left);
    }

    /** With no line known to be left out beyond what the attempts tell. */
    LineIndex noneLeftOut() {
        return replaced(lines, where, furthest, HashTreePSet.empty());
    }

    /** With a mark; one past the last line is of the last line. */
    LineIndex marked(StreamTime at, int line, String note) {
        int index = Math.min(line, lines.size()) - 1;
        return new LineIndex(lines.with(index, lines.get(index).marked(at, note)), where, furthest, leftOut);
    }

    /** The same notes for the lines of a changed script, of which there are {@code count}. */
    LineIndex renumbered(Renumbering change, int count) {
        LineIndex fresh = blank(count);
        PVector<LineNotes> notes = fresh.lines;
        PMap<Integer, PMap<Integer, Integer>> places = fresh.where;
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
        for (int line = 1; line <= count; line++) {
            notes = notes.with(line - 1, notes.get(line - 1).reached(line <= last || left.contains(line)));
        }
        return new LineIndex(notes, places, last, left);
    }

    private LineIndex replaced(
            PVector<LineNotes> notes,
            PMap<Integer, PMap<Integer, Integer>> places,
            int nowFurthest,
            PSet<Integer> nowLeftOut) {
        Set<Integer> changed = new HashSet<>(leftOut);
        changed.addAll(nowLeftOut);
        for (int line = Math.min(furthest, nowFurthest) + 1; line <= Math.max(furthest, nowFurthest); line++) {
            changed.add(line);
        }
        PVector<LineNotes> reached = notes;
        for (int line : changed) {
            boolean now = line <= nowFurthest || nowLeftOut.contains(line);
            reached = reached.with(line - 1, reached.get(line - 1).reached(now));
        }
        return new LineIndex(reached, places, nowFurthest, nowLeftOut);
    }

    private static PMap<Integer, Integer> ordinals(PMap<Integer, PMap<Integer, Integer>> places, int take) {
        PMap<Integer, Integer> ordinals = places.get(take);
        return ordinals == null ? HashTreePMap.empty() : ordinals;
    }
}
