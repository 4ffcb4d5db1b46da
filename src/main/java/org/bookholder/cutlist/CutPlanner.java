package org.bookholder.cutlist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.FilmChoices;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;

/**
 * Decides which attempt of each line is used and where it is cut.
 *
 * <p>It uses the last clean attempt of each line, and does without lines that were left out on purpose. Lines that were read one after another stay in one clip, so that
 * there are as few cuts as possible; a line without a usable attempt leaves a gap with a marker. Cuts lie in the
 * silence before or after what is used, never within a word.
 */
public final class CutPlanner {
    private final SessionState state;
    private final CutRules rules;
    private final IntPredicate wanted;
    private final Predicate<Attempt> hidden;
    private final CutEdges edges;
    private final MarkerPlan markers;
    private final LikelyLength lengths;

    private CutPlanner(
            SessionState state, CutRules rules, TakeSound sound, IntPredicate wanted, Predicate<Attempt> hidden) {
        this.state = state;
        this.rules = rules;
        this.wanted = wanted;
        this.hidden = hidden;
        this.edges = new CutEdges(state, rules, sound);
        this.markers = new MarkerPlan(state);
        this.lengths = new LikelyLength(state, rules);
    }

    /**
     * Plans the cut of a session; of one that is still running, as far as it has been read.
     *
     * @param sound the takes' recordings, to find the silences
     * @throws ProblemException if a recording cannot be read
     */
    public static CutList plan(SessionState state, CutRules rules, TakeSound sound) throws ProblemException {
        return plan(state, rules, sound, line -> true, attempt -> false);
    }

    /**
     * The same of some lines only: the others leave neither clip nor gap.
     *
     * @param hidden whether an attempt cannot be seen, so that one as good goes before it
     */
    public static CutList plan(
            SessionState state, CutRules rules, TakeSound sound, IntPredicate wanted, Predicate<Attempt> hidden)
            throws ProblemException {
        return new CutPlanner(state, rules, sound, wanted, hidden).plan();
    }

    /** The attempt of a line that is used, if there is one. */
    public static Optional<Attempt> chosen(LineNotes line, CutRules rules) {
        return line.best()
                .filter(best ->
                        !line.leftOut() && (rules.useMisread() || line.kept() || best.outcome() == Outcome.CLEAN));
    }

    /**
     * The same where some attempts cannot be seen: the last one goes first that can and that is as good. What somebody decided, or asked
     * for after an attempt, stays.
     *
     * @param hidden whether an attempt cannot be seen
     */
    public static Optional<Attempt> chosen(LineNotes line, CutRules rules, Predicate<Attempt> hidden) {
        Optional<Attempt> usual = chosen(line, rules);
        if (line.decision().isPresent() || usual.filter(hidden).isEmpty()) {
            return usual;
        }
        return line.attempts().stream()
                .filter(a -> a.outcome() == usual.get().outcome() && !hidden.test(a))
                .filter(a -> line.lastMark()
                        .filter(mark -> !mark.isBefore(a.start()))
                        .isEmpty())
                .reduce((a, b) -> b)
                .or(() -> usual);
    }

    /**
     * A part of the cut, before its edges are known.
     *
     * @param run the attempts that are used in one go; none for a gap
     * @param gap the line of a gap
     */
    private record Part(List<Attempt> run, Optional<LineNotes> gap) {
        Optional<Attempt> first() {
            return run.stream().findFirst();
        }

        Optional<Attempt> last() {
            return run.stream().reduce((a, b) -> b);
        }
    }

    private CutList plan() throws ProblemException {
        List<Part> parts = parts();
        List<CutItem> items = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            Part part = parts.get(i);
            Optional<Attempt> before =
                    i == 0 ? Optional.empty() : parts.get(i - 1).last();
            Optional<Attempt> after =
                    i == parts.size() - 1 ? Optional.empty() : parts.get(i + 1).first();
            items.add(part.gap().isPresent() ? gap(part.gap().get()) : clip(part.run(), before, after));
        }
        return new CutList(items);
    }

    private List<Part> parts() throws ProblemException {
        List<Part> parts = new ArrayList<>();
        List<Attempt> run = new ArrayList<>();
        for (LineNotes line : state.lines().all()) {
            boolean counts = wanted.test(line.line()) && !line.leftOut();
            Optional<Attempt> use = counts ? chosen(line, rules, hidden) : Optional.empty();
            if (!run.isEmpty() && (use.isEmpty() || !edges.inOneGo(run.get(run.size() - 1), use.get()))) {
                parts.add(new Part(List.copyOf(run), Optional.empty()));
                run.clear();
            }
            if (use.isPresent()) {
                run.add(use.get());
            } else if (counts) {
                parts.add(new Part(List.of(), Optional.of(line)));
            }
        }
        if (!run.isEmpty()) {
            parts.add(new Part(List.copyOf(run), Optional.empty()));
        }
        return parts;
    }

    private Clip clip(List<Attempt> run, Optional<Attempt> before, Optional<Attempt> after) throws ProblemException {
        Attempt first = run.get(0);
        CutEdges.Edge in = edges.in(first, before);
        CutEdges.Edge end = edges.out(run.get(run.size() - 1), after);
        StreamTime out = StreamTime.max(end.cut(), in.cut().plus(new StreamTime(1)));
        FilmChoices choices = state.remarks().film(first.line());
        return new Clip(
                first.take(),
                in.cut(),
                out,
                StreamTime.min(in.quiet(), in.cut()),
                StreamTime.max(end.quiet(), out),
                run,
                markers.of(run, in.cut(), out),
                choices.framing(),
                choices.camera());
    }

    private Gap gap(LineNotes line) {
        StreamTime length = lengths.of(line);
        return new Gap(line.line(), length, markers.ofGap(line, length));
    }
}
