package org.bookholder.cutlist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.session.Decision;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;

/** Places the editor's markers: what is to be recorded again or fixed, notes, asides, and the script's directions. */
record MarkerPlan(SessionState state) {
    /** The markers of a clip in order of lines. */
    List<CutMarker> of(List<Attempt> run, StreamTime in, StreamTime out) {
        List<CutMarker> markers = new ArrayList<>();
        for (Attempt attempt : run) {
            LineNotes line = state.lines().notes(attempt.line());
            StreamTime begins = attempt.start().since(in);
            directions(attempt.line()).forEach(direction -> markers.add(direction(direction, begins, attempt.line())));
            of(line, begins).ifPresent(markers::add);
            StreamTime after = attempt.equals(run.get(run.size() - 1)) ? out : attempt.end();
            asides(attempt.line()).forEach(aside -> markers.add(aside(aside, after.since(in))));
        }
        int last = run.get(run.size() - 1).line();
        atTheEnd(last).forEach(direction -> markers.add(direction(direction, out.since(in), last)));
        return markers;
    }

    /** The markers of a gap of that length, at least the reason for it. */
    List<CutMarker> ofGap(LineNotes line, StreamTime length) {
        List<CutMarker> markers = new ArrayList<>();
        directions(line.line()).forEach(direction -> markers.add(direction(direction, StreamTime.ZERO, line.line())));
        markers.add(
                CutMarker.of(line.kept() ? CutMarker.Kind.FIX : CutMarker.Kind.PICKUP, StreamTime.ZERO, line.line()));
        asides(line.line()).forEach(aside -> markers.add(aside(aside, StreamTime.ZERO)));
        atTheEnd(line.line()).forEach(direction -> markers.add(direction(direction, length, line.line())));
        return markers;
    }

    /** The marker of a line that is used; empty if there is nothing to note. */
    private Optional<CutMarker> of(LineNotes line, StreamTime offset) {
        if (line.pickup()) {
            return Optional.of(CutMarker.of(CutMarker.Kind.PICKUP, offset, line.line()));
        }
        if (line.decidedTo(Decision.Choice.FIX_IN_EDIT)) {
            return Optional.of(CutMarker.of(CutMarker.Kind.FIX, offset, line.line()));
        }
        return written(line) ? Optional.of(CutMarker.of(CutMarker.Kind.NOTE, offset, line.line())) : Optional.empty();
    }

    /** Whether someone wrote something on the line that still holds. */
    private boolean written(LineNotes line) {
        return line.openMarks().stream().anyMatch(mark -> !mark.isEmpty())
                || state.remarks().notes().stream()
                        .anyMatch(note -> note.line() == line.line()
                                && !note.pickup()
                                && !note.text().isEmpty());
    }

    /** The asides reported at a line; those said before line 1 are reported at line 1. */
    private List<Aside> asides(int line) {
        return state.lines().asides().stream()
                .filter(a -> Math.max(1, a.line()) == line)
                .toList();
    }

    /** The directions that stand between the line before and this one. */
    private List<Direction> directions(int line) {
        List<Direction> before = new ArrayList<>();
        for (ScriptElement element : state.script().elements()) {
            if (element instanceof Direction direction) {
                before.add(direction);
            } else if (element instanceof ScriptLine spoken) {
                if (spoken.number() == line) {
                    return before;
                }
                before.clear();
            }
        }
        return before;
    }

    /** The directions after the script's last line; empty if this is another line. */
    private List<Direction> atTheEnd(int line) {
        int after = state.script().lines().size() + 1;
        return line + 1 == after ? directions(after) : List.of();
    }

    private static CutMarker direction(Direction direction, StreamTime offset, int line) {
        return new CutMarker(CutMarker.Kind.DIRECTION, offset, line, Optional.empty(), Optional.of(direction.text()));
    }

    private static CutMarker aside(Aside aside, StreamTime offset) {
        return new CutMarker(CutMarker.Kind.ASIDE, offset, Math.max(1, aside.line()), Optional.of(aside));
    }
}
