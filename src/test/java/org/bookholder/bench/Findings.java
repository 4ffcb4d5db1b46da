package org.bookholder.bench;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.bench.ReadingRun.Ended;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionEvent;

/**
 * The findings about a reading, by the program or by a system it is compared with.
 *
 * @param lines one for each line of the script, in order
 * @param asides speech that is not in the script
 * @param moves each change of the displayed position, in order of time; empty if none was displayed
 */
record Findings(List<LineFound> lines, List<Time> asides, List<Move> moves) {
    /** Copies the lists. */
    Findings {
        lines = List.copyOf(lines);
        asides = List.copyOf(asides);
        moves = List.copyOf(moves);
    }

    /**
     * A stretch of the reading.
     *
     * @param start in seconds
     * @param end in seconds
     */
    record Time(double start, double end) {}

    /**
     * A line.
     *
     * @param outcome the reported outcome
     * @param attempts the reported number of attempts
     * @param best the attempt to use; empty or one
     */
    record LineFound(Outcome outcome, int attempts, List<Time> best) {}

    /**
     * A change of the displayed position.
     *
     * @param at audio captured by then, in seconds
     * @param line its line
     * @param word the next word to read in that line, from 1
     */
    record Move(double at, int line, int word) {}

    private static final Move NOTHING_SHOWN = new Move(0, 0, 1);

    /** What the program found. */
    static Findings of(Ended ended) {
        List<LineFound> lines = new ArrayList<>();
        for (LineNotes notes : ended.state().lines().all()) {
            lines.add(new LineFound(
                    notes.outcome(),
                    notes.attempts().size(),
                    notes.best().map(Findings::time).stream().toList()));
        }
        List<Move> moves = new ArrayList<>();
        for (SessionEvent event : ended.events()) {
            if (event instanceof SessionEvent.PositionMoved moved) {
                moves.add(new Move(
                        moved.at().seconds(),
                        moved.position().line(),
                        moved.position().word()));
            }
        }
        return new Findings(
                lines,
                ended.state().lines().asides().stream().map(Findings::time).toList(),
                moves);
    }

    private static Time time(Attempt attempt) {
        return new Time(attempt.start().seconds(), attempt.end().seconds());
    }

    private static Time time(Aside aside) {
        return new Time(aside.start().seconds(), aside.end().seconds());
    }

    /** The displayed line at a time; 0 before the first. */
    int lineAt(double seconds) {
        return shownAt(seconds).line();
    }

    /** The displayed position at a time; line 0 before the first. */
    Move shownAt(double seconds) {
        int low = 0;
        int high = moves.size();
        while (low < high) {
            int middle = (low + high) / 2;
            if (moves.get(middle).at() <= seconds) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low == 0 ? NOTHING_SHOWN : moves.get(low - 1);
    }

    /** When a line is first displayed between {@code from} and {@code to}; infinite if it is not. */
    double firstShown(int line, double from, double to) {
        if (lineAt(from) == line) {
            return from;
        }
        return moves.stream()
                .filter(m -> m.line() == line && m.at() >= from && m.at() <= to)
                .mapToDouble(Move::at)
                .findFirst()
                .orElse(Double.POSITIVE_INFINITY);
    }
}
