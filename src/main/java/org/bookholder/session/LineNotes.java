package org.bookholder.session;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.timing.StreamTime;

/**
 * Everything known about one line.
 *
 * @param line line number, from 1
 * @param outcome outcome of the best attempt; incomplete if no attempt is complete; skipped if there is no attempt; not
 *     judged if no attempt is complete and the program failed to judge what was read
 * @param reached whether the reading has reached or passed it
 * @param attempts its attempts in order of time
 * @param best the last complete and clean attempt; if none is clean, the last complete one
 * @param marks notes of people who marked it as a pickup by hand
 * @param lastMark when it was last marked; a clean attempt that begins later settles the marks
 * @param decision the decision about it in the review
 */
public record LineNotes(
        int line,
        Outcome outcome,
        boolean reached,
        List<Attempt> attempts,
        Optional<Attempt> best,
        List<String> marks,
        Optional<StreamTime> lastMark,
        Optional<Decision> decision) {
    private static final Comparator<Attempt> BY_TIME =
            Comparator.comparingInt(Attempt::take).thenComparingInt(Attempt::ordinal);

    /** Copies the lists. */
    public LineNotes {
        attempts = List.copyOf(attempts);
        marks = List.copyOf(marks);
    }

    /** A line about which nothing is known. */
    static LineNotes unread(int line) {
        return new LineNotes(
                line,
                Outcome.SKIPPED,
                false,
                List.of(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty());
    }

    /** Whether the line should be recorded again. */
    public boolean pickup() {
        if (decision.isPresent()) {
            return !decision.get().settles() && !answers(decision.get().at());
        }
        return marked() || (reached && outcome != Outcome.CLEAN);
    }

    /** Whether someone marked it, with no decision about it and no clean attempt begun since. */
    public boolean marked() {
        return !marks.isEmpty() && decision.isEmpty() && !marksAnswered();
    }

    /** The marks that the attempt to be used has not settled: none if it is clean and began after the last of them. */
    public List<String> openMarks() {
        return marksAnswered() ? List.of() : marks;
    }

    private boolean marksAnswered() {
        return lastMark.filter(this::answers).isPresent();
    }

    /** Whether someone decided to use the best attempt in spite of any errors heard in it. */
    public boolean kept() {
        return decision.filter(Decision::settles).isPresent() && !leftOut();
    }

    /** Whether someone decided that the lesson goes out without it. */
    public boolean leftOut() {
        return decidedTo(Decision.Choice.LEAVE_OUT);
    }

    /** Whether the decision about it is this choice. */
    public boolean decidedTo(Decision.Choice choice) {
        return decision.filter(made -> made.choice() == choice).isPresent();
    }

    /** Whether a clean attempt has begun since this time. */
    private boolean answers(StreamTime asked) {
        return outcome == Outcome.CLEAN
                && best.filter(b -> asked.isBefore(b.start())).isPresent();
    }

    /**
     * The same with other attempts and a decision applied to them. Call it on notes of what was heard, to which no
     * decision was applied yet.
     */
    LineNotes ruled(List<Attempt> seen, Optional<Decision> ruling) {
        LineNotes judged = judged(seen);
        Optional<Attempt> chosen = ruling.filter(Decision::settles).flatMap(d -> chosen(seen, d));
        return new LineNotes(
                line,
                chosen.map(Attempt::outcome).orElse(judged.outcome),
                reached,
                chosen.map(c -> judged.attempts.stream()
                                .map(a -> same(a, c) ? c : a)
                                .toList())
                        .orElse(judged.attempts),
                chosen.or(judged::best),
                marks,
                lastMark,
                ruling);
    }

    private static Optional<Attempt> chosen(List<Attempt> seen, Decision ruling) {
        return seen.stream()
                .filter(a -> a.take() == ruling.take() && a.ordinal() == ruling.ordinal())
                .findFirst()
                .map(a -> ruling.choice() == Decision.Choice.NOT_A_FAULT
                        ? new Attempt(a.take(), a.ordinal(), a.line(), a.start(), a.end(), true, a.words(), List.of())
                        : a);
    }

    private static boolean same(Attempt a, Attempt b) {
        return a.take() == b.take() && a.ordinal() == b.ordinal();
    }

    /** The same notes under the line's new number. */
    LineNotes movedTo(int number) {
        List<Attempt> moved = attempts.stream().map(a -> a.withLine(number)).toList();
        return new LineNotes(
                number, outcome, reached, moved, best.map(a -> a.withLine(number)), marks, lastMark, decision);
    }

    /** The same, with the outcome "not judged". */
    LineNotes notJudged() {
        return new LineNotes(line, Outcome.NOT_JUDGED, true, attempts, best, marks, lastMark, decision);
    }

    LineNotes reached(boolean now) {
        return now == reached ? this : new LineNotes(line, outcome, now, attempts, best, marks, lastMark, decision);
    }

    LineNotes marked(StreamTime at, String note) {
        List<String> more = new ArrayList<>(marks);
        more.add(note);
        StreamTime latest = lastMark.map(before -> StreamTime.max(before, at)).orElse(at);
        return new LineNotes(line, outcome, reached, attempts, best, more, Optional.of(latest), decision);
    }

    /** The same without one mark that has this text. */
    LineNotes unmarked(String note, Optional<StreamTime> latest) {
        List<String> fewer = new ArrayList<>(marks);
        fewer.remove(note);
        Optional<StreamTime> last = fewer.isEmpty() ? Optional.empty() : latest;
        return new LineNotes(line, outcome, reached, attempts, best, fewer, last, decision);
    }

    /** The same with another text for one mark. */
    LineNotes remarked(String before, String after) {
        List<String> changed = new ArrayList<>(marks);
        int index = changed.indexOf(before);
        if (index >= 0) {
            changed.set(index, after);
        }
        return new LineNotes(line, outcome, reached, attempts, best, changed, lastMark, decision);
    }

    LineNotes with(Attempt attempt) {
        List<Attempt> more = new ArrayList<>(attempts);
        more.add(attempt);
        more.sort(BY_TIME);
        return judged(more);
    }

    /** The attempt that decides the line's outcome: the best one, or else the last; empty if it was never tried. */
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
        return new LineNotes(
                line, chosen.map(Attempt::outcome).orElse(none), reached, tried, chosen, marks, lastMark, decision);
    }

    private static Optional<Attempt> last(List<Attempt> tried, Outcome outcome) {
        return tried.stream().filter(a -> a.outcome() == outcome).reduce((a, b) -> b);
    }
}
