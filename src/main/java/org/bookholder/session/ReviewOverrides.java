package org.bookholder.session;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.timing.StreamTime;
import org.pcollections.HashTreePMap;
import org.pcollections.HashTreePSet;
import org.pcollections.PMap;
import org.pcollections.PSet;
import org.pcollections.PVector;

/**
 * People's decisions about lines and attempts. They are applied on top of what was heard and do not change it, so that
 * they can be undone.
 *
 * @param lines decisions by line
 * @param bounds begin and end of attempts as set by ear
 * @param readRight deviations that were mistakes of the recogniser
 * @param film what becomes of lines in the film; it changes no notes
 */
record ReviewOverrides(
        PMap<Integer, Decision> lines,
        PMap<Key, Bounds> bounds,
        PSet<AcceptedReading> readRight,
        PMap<Integer, FilmChoices> film) {
    static final ReviewOverrides NONE =
            new ReviewOverrides(HashTreePMap.empty(), HashTreePMap.empty(), HashTreePSet.empty(), HashTreePMap.empty());

    /** An attempt's take and its number within it. */
    record Key(int take, int ordinal) {}

    /** The begin and end of an attempt. */
    record Bounds(StreamTime start, StreamTime end) {}

    boolean isEmpty() {
        return lines.isEmpty() && bounds.isEmpty() && readRight.isEmpty();
    }

    /** The readings of these attempts that the decision accepts. */
    static List<AcceptedReading> accepted(int line, Decision decision, List<Attempt> heard) {
        if (decision.choice() != Decision.Choice.NOT_A_FAULT) {
            return List.of();
        }
        return heard.stream()
                .filter(attempt -> attempt.take() == decision.take() && attempt.ordinal() == decision.ordinal())
                .flatMap(attempt -> attempt.deviations().stream())
                .flatMap(call -> AcceptedReading.from(line, call).stream())
                .toList();
    }

    ReviewOverrides decided(int line, Decision decision, List<AcceptedReading> accepted) {
        return new ReviewOverrides(lines.plus(line, decision), bounds, readRight.plusAll(accepted), film);
    }

    ReviewOverrides bounded(int take, int ordinal, StreamTime start, StreamTime end) {
        return new ReviewOverrides(lines, bounds.plus(new Key(take, ordinal), new Bounds(start, end)), readRight, film);
    }

    ReviewOverrides carried(List<AcceptedReading> earlier) {
        return new ReviewOverrides(lines, bounds, readRight.plusAll(earlier), film);
    }

    ReviewOverrides filmed(int line, FilmChange change) {
        FilmChoices before = film.getOrDefault(line, FilmChoices.NONE);
        return new ReviewOverrides(lines, bounds, readRight, film.plus(line, before.with(change)));
    }

    /** The same for a changed script, without the decisions about lines that are gone. */
    ReviewOverrides renumbered(Renumbering change) {
        PMap<Integer, Decision> moved = HashTreePMap.empty();
        for (Map.Entry<Integer, Decision> decided : lines.entrySet()) {
            int line = change.line(decided.getKey());
            moved = line > 0 ? moved.plus(line, decided.getValue()) : moved;
        }
        PMap<Integer, FilmChoices> filmed = HashTreePMap.empty();
        for (Map.Entry<Integer, FilmChoices> chosen : film.entrySet()) {
            int line = change.line(chosen.getKey());
            filmed = line > 0 || chosen.getKey() == 0 ? filmed.plus(line, chosen.getValue()) : filmed;
        }
        return new ReviewOverrides(moved, bounds, HashTreePSet.from(renumbered(readRight, change)), filmed);
    }

    /** The accepted readings for a changed script, without those of lines that are gone. */
    static List<AcceptedReading> renumbered(Collection<AcceptedReading> readings, Renumbering change) {
        return readings.stream()
                .filter(r -> r.line() == 0 || change.line(r.line()) > 0)
                .map(r -> new AcceptedReading(change.line(r.line()), r.written(), r.said(), r.kind()))
                .toList();
    }

    /** The notes on the lines: what was heard, with the decisions applied; {@code before} is the state before. */
    PVector<LineNotes> over(LineIndex heard, SessionState before) {
        if (isEmpty()) {
            return heard.lines();
        }
        boolean same = equals(before.remarks().rulings());
        return over(
                heard.lines(),
                before.sums().heard().lines(),
                same ? before.lines().all() : List.of());
    }

    /**
     * Applies the decisions to the notes.
     *
     * @param heard what was heard
     * @param heardBefore what had been heard when {@code seenBefore} was made with these same decisions
     * @param seenBefore the earlier result; empty if there is none
     */
    PVector<LineNotes> over(PVector<LineNotes> heard, PVector<LineNotes> heardBefore, List<LineNotes> seenBefore) {
        boolean fresh = seenBefore.size() != heard.size();
        PVector<LineNotes> seen = heard;
        int line = 0;
        for (LineNotes notes : heard) {
            boolean same = !fresh && heardBefore.get(line).equals(notes);
            LineNotes over = same ? seenBefore.get(line) : over(notes);
            if (!over.equals(notes)) {
                seen = seen.with(line, over);
            }
            line++;
        }
        return seen;
    }

    private LineNotes over(LineNotes heard) {
        List<Attempt> attempts = heard.attempts().stream().map(this::over).toList();
        Optional<Decision> decision = Optional.ofNullable(lines.get(heard.line()));
        return decision.isEmpty() && attempts.equals(heard.attempts()) ? heard : heard.ruled(attempts, decision);
    }

    private Attempt over(Attempt heard) {
        Bounds own = bounds.get(new Key(heard.take(), heard.ordinal()));
        List<Deviation> calls = heard.deviations().stream()
                .filter(call -> !isReadRight(AcceptedReading.of(heard.line(), call)))
                .toList();
        if (own == null && calls.size() == heard.deviations().size()) {
            return heard;
        }
        return new Attempt(
                heard.take(),
                heard.ordinal(),
                heard.line(),
                own == null ? heard.start() : own.start(),
                own == null ? heard.end() : own.end(),
                heard.complete(),
                heard.words(),
                calls);
    }

    private boolean isReadRight(AcceptedReading call) {
        return readRight.contains(call) || readRight.stream().anyMatch(known -> known.covers(call));
    }
}
