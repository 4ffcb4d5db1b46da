package org.bookholder.session;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.bookholder.follow.Attempt;
import org.bookholder.follow.Outcome;
import org.bookholder.timing.StreamTime;

/**
 * What is known of one line.
 *
 * @param line line number, from 1
 * @param outcome that of the best attempt; where none is complete, incomplete; where there is none, skipped
 * @param reached whether the reading came to it or past it
 * @param attempts in order of time
 * @param best the last complete and clean attempt; where none is clean, the last complete one
 * @param marks notes of people who marked it as a pickup by hand
 * @param lastMark when it was last marked; a clean attempt that begins later answers the marks
 */
public record LineNotes(
        int line,
        Outcome outcome,
        boolean reached,
        List<Attempt> attempts,
        Optional<Attempt> best,
        List<String> marks,
        Optional<StreamTime> lastMark) {
    private static final Comparator<Attempt> BY_TIME =
            Comparator.comparingInt(Attempt::take).thenComparingInt(Attempt::ordinal);

    /** Copies the lists. */
    public LineNotes {
        attempts = List.copyOf(attempts);
        marks = List.copyOf(marks);
    }

    /** Notes whose marks, if any, are not answered. */
    public LineNotes(
            int line,
            Outcome outcome,
            boolean reached,
            List<Attempt> attempts,
            Optional<Attempt> best,
            List<String> marks) {
        this(line, outcome, reached, attempts, best, marks, Optional.empty());
    }

    /** Nothing known. */
    static LineNotes unread(int line) {
        return new LineNotes(line, Outcome.SKIPPED, false, List.of(), Optional.empty(), List.of());
    }

    /** Whether the line is to be recorded again. */
    public boolean pickup() {
        return marked() || (reached && outcome != Outcome.CLEAN);
    }

    /** Whether someone marked it and no clean attempt has begun since. */
    public boolean marked() {
        return !marks.isEmpty() && !answered();
    }

    private boolean answered() {
        return outcome == Outcome.CLEAN
                && lastMark.isPresent()
                && best.isPresent()
                && lastMark.get().isBefore(best.get().start());
    }

    LineNotes reached(boolean now) {
        return now == reached ? this : new LineNotes(line, outcome, now, attempts, best, marks, lastMark);
    }

    LineNotes marked(StreamTime at, String note) {
        List<String> more = new ArrayList<>(marks);
        more.add(note);
        return new LineNotes(line, outcome, reached, attempts, best, more, Optional.of(at));
    }

    LineNotes with(Attempt attempt) {
        List<Attempt> more = new ArrayList<>(attempts);
        more.add(attempt);
        more.sort(BY_TIME);
        return judged(more);
    }

    /** The attempt that tells what became of the line: the best, else the last; empty if it was never tried. */
    public Optional<Attempt> telling() {
        return best.or(() -> attempts.stream().reduce((a, b) -> b));
    }

    LineNotes without(int take, int ordinal) {
        return judged(attempts.stream()
                .filter(a -> a.take() != take || a.ordinal() != ordinal)
                .toList());
    }

    private LineNotes judged(List<Attempt> tried) {
        Optional<Attempt> clean = last(tried, Outcome.CLEAN);
        Optional<Attempt> chosen = clean.isPresent() ? clean : last(tried, Outcome.MISREAD);
        Outcome none = tried.isEmpty() ? Outcome.SKIPPED : Outcome.INCOMPLETE;
        return new LineNotes(line, chosen.map(Attempt::outcome).orElse(none), reached, tried, chosen, marks, lastMark);
    }

    private static Optional<Attempt> last(List<Attempt> tried, Outcome outcome) {
        return tried.stream().filter(a -> a.outcome() == outcome).reduce((a, b) -> b);
    }
}
